// Brings a copy of the repository into a state that runs: dependencies, Prisma's client, the built portal. Each step
// is skipped when it is up to date. Node's own modules only: it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The repository's root. */
export const root = resolve(dirname(fileURLToPath(import.meta.url)), '../../..');

/** A step failed; the message says which and what to do. */
export class PrepareError extends Error {
  name = 'PrepareError';
}

/**
 * Does what is out of date, one printed line a step.
 * @param {{ portal?: boolean }} [options] portal: false leaves the portal as it is (nothing will be served).
 * @throws PrepareError
 */
export function prepare({ portal = true } = {}) {
  requireNode();
  if (!dependenciesInstalled()) {
    step('Installing dependencies (this takes a minute the first time)', () => {
      run(npmCommand(), ['ci', '--no-audit', '--no-fund', '--prefer-offline', '--loglevel=error'], {
        hint: 'npm could not install the dependencies: is the registry reachable, does package-lock.json fit?',
      });
    });
  }
  whenChanged(
    'database-client',
    ['prisma', 'prisma.config.ts'],
    'packages/db/src/generated',
    /\.(prisma|ts)$/,
    () =>
      step('Generating the database client', () => {
        // Generating needs no engine program, but Prisma fetches one from the network unless it is told of a file.
        const env = { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: '1' };
        run(process.execPath, [bin('prisma/build/index.js'), 'generate'], {
          env,
          hint: 'Prisma could not generate.',
        });
      }),
  );
  if (portal) {
    const sources = ['apps/portal', 'packages/contract/src', 'packages/trade/src', 'package-lock.json'];
    whenChanged('portal', sources, 'apps/portal/dist/index.html', /./, () =>
      step('Building the portal', () => {
        const args = [bin('vite/bin/vite.js'), 'build', '--logLevel', 'warn'];
        run(process.execPath, args, { cwd: 'apps/portal', hint: 'Vite could not build the portal.' });
      }),
    );
  }
}

function requireNode() {
  const wanted = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).engines.node.replace('>=', '');
  const [major, minor] = wanted.split('.').map(Number);
  const [ourMajor, ourMinor] = process.versions.node.split('.').map(Number);
  if (ourMajor > major || (ourMajor === major && ourMinor >= minor)) return;
  throw new PrepareError(`Node.js ${wanted} or later is needed; this is ${process.versions.node}.`);
}

// npm notes in node_modules what it installed; that is compared with what package-lock.json asks for.
function dependenciesInstalled() {
  const noted = join(root, 'node_modules/.package-lock.json');
  if (!existsSync(noted)) return false;
  const installed = JSON.parse(readFileSync(noted, 'utf8')).packages;
  const wanted = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  const production = process.env.NODE_ENV === 'production';
  return Object.entries(wanted).every(([path, entry]) => {
    if (!path.includes('node_modules/')) return true;
    if (entry.optional || entry.devOptional || entry.peer || (production && entry.dev)) return true;
    return installed[path]?.version === entry.version && installed[path]?.link === entry.link;
  });
}

function whenChanged(name, sources, output, pattern, work) {
  const stamp = join(root, 'node_modules/.prepared', name);
  const hash = hashOf(sources, pattern);
  if (existsSync(join(root, output)) && existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  work();
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, hash);
}

const leftOut = new Set(['node_modules', 'dist', 'migrations']);

function hashOf(sources, pattern) {
  const hash = createHash('sha256');
  const add = (path) => {
    const entries = readdirSync(join(root, path), { withFileTypes: true });
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      const inner = `${path}/${entry.name}`;
      if (entry.isDirectory() && !leftOut.has(entry.name)) add(inner);
      else if (entry.isFile() && pattern.test(entry.name)) addFile(inner);
    }
  };
  const addFile = (path) =>
    hash
      .update(`${path}\0`)
      .update(readFileSync(join(root, path)))
      .update('\0');
  for (const source of sources) {
    if (/\.\w+$/.test(source)) addFile(source);
    else add(source);
  }
  return hash.digest('hex');
}

function step(title, work) {
  const start = performance.now();
  process.stdout.write(`${title} … `);
  work();
  process.stdout.write(`${((performance.now() - start) / 1000).toFixed(1)} s\n`);
}

function run(command, args, { env = {}, cwd = '.', hint }) {
  const result = spawnSync(command, args, {
    cwd: join(root, cwd),
    env: { ...process.env, ...env },
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    shell: process.platform === 'win32' && command.endsWith('.cmd'),
  });
  if (result.status === 0) return;
  const said =
    result.error?.message ?? `${result.stdout}\n${result.stderr}`.trim().split('\n').slice(-30).join('\n');
  throw new PrepareError(`\n${said}\n\n${hint}`);
}

function npmCommand() {
  return process.platform === 'win32' ? 'npm.cmd' : 'npm';
}

function bin(path) {
  return join(root, 'node_modules', path);
}

/** Runs `prepare` for a command: a failure is told in plain words and ends the process. */
export function prepareOrExit(options) {
  try {
    prepare(options);
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    console.error(error.message);
    process.exit(1);
  }
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) prepareOrExit();
