// Brings a copy of the repository into a state that runs: dependencies, Prisma's client, the built portal. Each step
// is skipped when it is up to date. Node's own modules only: it runs before anything is installed.
import { spawn } from 'node:child_process';
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
 * Does what is out of date, and prints each step as it begins and ends.
 * @param {{ portal?: boolean }} [options] portal: false leaves the portal as it is (nothing will be served).
 * @throws PrepareError
 */
export async function prepare({ portal = true } = {}) {
  requireNode();
  if (!dependenciesInstalled()) {
    await step('Installing dependencies (this takes a minute the first time)', () =>
      run(npmCommand(), ['ci', '--no-audit', '--no-fund', '--prefer-offline', '--loglevel=error'], {
        hint: 'npm could not install the dependencies: is the registry reachable, does package-lock.json fit?',
      }),
    );
  }
  // Neither needs the other. When one fails the other ends first: nothing goes on after we have ended.
  const both = await Promise.allSettled([generateClient(), portal ? buildPortal() : null]);
  for (const one of both) if (one.status === 'rejected') throw one.reason;
}

const generateClient = () =>
  whenChanged(
    'database-client',
    ['prisma', 'prisma.config.ts'],
    'packages/db/src/generated',
    /\.(prisma|ts)$/,
    () =>
      step('Generating the database client', () => {
        // Generating needs no engine program, but Prisma fetches one from the network unless it is told of a file.
        const env = { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: '1' };
        const args = [bin('prisma/build/index.js'), 'generate'];
        return run(process.execPath, args, { env, hint: 'Prisma could not generate.' });
      }),
  );

function buildPortal() {
  const sources = ['apps/portal', 'packages/contract/src', 'packages/trade/src', 'package-lock.json'];
  return whenChanged('portal', sources, 'apps/portal/dist/index.html', /./, () =>
    step('Building the portal', () => {
      const args = [bin('vite/bin/vite.js'), 'build', '--logLevel', 'warn'];
      return run(process.execPath, args, { cwd: 'apps/portal', hint: 'Vite could not build the portal.' });
    }),
  );
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

async function whenChanged(name, sources, output, pattern, work) {
  const stamp = join(root, 'node_modules/.prepared', name);
  const hash = hashOf(sources, pattern);
  if (existsSync(join(root, output)) && existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  await work();
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

async function step(title, work) {
  const start = performance.now();
  console.log(`${title} …`);
  await work();
  console.log(`${title}: ${((performance.now() - start) / 1000).toFixed(1)} s`);
}

function run(command, args, { env = {}, cwd = '.', hint }) {
  const child = spawn(command, args, {
    cwd: join(root, cwd),
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
    shell: process.platform === 'win32' && command.endsWith('.cmd'),
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (chunk) => (said += chunk));
  return new Promise((done, fail) => {
    const failed = (words) => fail(new PrepareError(`\n${words}\n\n${hint}`));
    child.once('error', (error) => failed(error.message));
    child.once('close', (status) =>
      status === 0 ? done() : failed(said.trim().split('\n').slice(-30).join('\n')),
    );
  });
}

function npmCommand() {
  return process.platform === 'win32' ? 'npm.cmd' : 'npm';
}

function bin(path) {
  return join(root, 'node_modules', path);
}

/** Runs `prepare` for a command: a failure is told in plain words and ends the process. */
export async function prepareOrExit(options) {
  try {
    await prepare(options);
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    console.error(error.message);
    process.exit(1);
  }
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) await prepareOrExit();
