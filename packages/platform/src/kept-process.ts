import { type ChildProcess, spawn } from 'node:child_process';
import { createWriteStream, type WriteStream } from 'node:fs';
import { mkdir, rename, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import { repositoryRoot } from './paths.ts';

/** A TypeScript program run as a process of its own. */
export interface Program {
  name: string;
  /** Relative to the repository's root. */
  file: string;
  args?: string[];
  /** Restart it when a file it imports changes. */
  watch?: boolean;
}

/** What a process is given and where its output goes. */
export interface ProgramSurroundings {
  env: NodeJS.ProcessEnv;
  /** Each line it prints is added to this file. */
  logFile: string;
  /** Gets each line too. */
  onLine: (line: string) => void;
}

/**
 * Answers and maps are made of many small objects that live for milliseconds: with the 16 MB that Node gives them by
 * itself, collecting takes half the time of a large moisture map.
 */
const roomForNewObjects = '--max-semi-space-size=64';

/** Starts a program. It shares no terminal signals with us (Ctrl-C is ours to pass on), and ends when we die. */
export async function startProgram(program: Program, around: ProgramSurroundings): Promise<ChildProcess> {
  const log = await openLog(around.logFile);
  const root = repositoryRoot();
  const runner = program.watch
    ? [join(root, 'node_modules/tsx/dist/cli.mjs'), 'watch', '--clear-screen=false', program.file]
    : [roomForNewObjects, '--import', 'tsx', program.file];
  const child = spawn(process.execPath, [...runner, ...(program.args ?? [])], {
    cwd: root,
    env: around.env,
    detached: true,
    // The fourth is a channel that closes when we die, on which the program stops: see onShutdown.
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  for (const stream of [child.stdout, child.stderr]) {
    if (!stream) continue;
    createInterface({ input: stream }).on('line', (line) => {
      log.write(`${line}\n`);
      around.onLine(line);
    });
  }
  child.once('close', () => log.end());
  return child;
}

/** Resolves with the exit code (1 for a signal) when the process has ended and its output is read. */
export function ended(child: ChildProcess): Promise<number> {
  return new Promise((resolve) => {
    child.once('error', () => resolve(1));
    child.once('close', (code) => resolve(code ?? 1));
  });
}

/** A program that is started again when it ends, ever later when it keeps ending. */
export interface KeptProgram {
  /** Asks it to stop, waits, and after `timeoutMs` ends it. It isn't started again. */
  stop(timeoutMs: number): Promise<void>;
}

/** Keeps a program running. `onEnd` is told each time it ends unasked, and when it will be started again. */
export function keepRunning(
  program: Program,
  around: ProgramSurroundings,
  onEnd: (code: number, restartInMs: number) => void,
): KeptProgram {
  const stopping = new AbortController();
  let child: ChildProcess | undefined;

  const run = async () => {
    for (let delay = firstDelayMs; !stopping.signal.aborted; ) {
      const startedAt = Date.now();
      child = await startProgram(program, around);
      const done = ended(child);
      if (stopping.signal.aborted) child.kill('SIGTERM');
      const code = await done;
      if (stopping.signal.aborted) return;
      if (Date.now() - startedAt > steadyMs) delay = firstDelayMs;
      onEnd(code, delay);
      await sleep(delay, undefined, { signal: stopping.signal }).catch(() => undefined);
      delay = Math.min(delay * 2, longestDelayMs);
    }
  };
  const running = run();

  return {
    async stop(timeoutMs) {
      stopping.abort();
      child?.kill('SIGTERM');
      const timer = setTimeout(() => killGroup(child), timeoutMs);
      await running;
      clearTimeout(timer);
    },
  };
}

const firstDelayMs = 500;
const longestDelayMs = 30_000;
const steadyMs = 60_000;
const logBytes = 10 * 1024 * 1024;

/** Ends a process and those it started, at once. */
export function killGroup(child: ChildProcess | undefined): void {
  if (!child?.pid || child.exitCode !== null) return;
  try {
    process.kill(-child.pid, 'SIGKILL');
  } catch {
    child.kill('SIGKILL');
  }
}

async function openLog(file: string): Promise<WriteStream> {
  await mkdir(dirname(file), { recursive: true, mode: 0o700 });
  const size = await stat(file).then(
    (found) => found.size,
    () => 0,
  );
  // One older file is kept.
  if (size > logBytes) await rename(file, `${file}.1`);
  return createWriteStream(file, { flags: 'a' });
}
