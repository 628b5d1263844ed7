import { execFile, spawn } from 'node:child_process';
import { accessSync, constants, existsSync, readFileSync } from 'node:fs';
import { chmod, mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { withFileLock } from './file-lock.ts';

const run = promisify(execFile);

/** A browser ready to be launched headless. */
export interface Chromium {
  executablePath: string;
  /** To be passed at launch. */
  args: string[];
  /** The browser's whole environment: what it needs of ours and none of our secrets. */
  env: Record<string, string>;
  source: 'CHROMIUM_PATH' | 'PATH' | 'bundled';
  /** False when the browser can't confine itself on this machine (as root, in some containers). */
  sandboxed: boolean;
}

/** Where to look for a browser. */
export interface ChromiumOptions {
  chromiumPath?: string;
  dataDir: string;
}

/**
 * Finds a browser: CHROMIUM_PATH, else one on PATH, else the one that comes with the service, unpacked into
 * `$DATA_DIR/chromium` on first use (about 1.5 s and 200 MB). It is tried once, and the answer kept for
 * the life of the process.
 * @throws Error saying what was tried and why the browser doesn't start.
 */
export function findChromium(options: ChromiumOptions): Promise<Chromium> {
  const key = JSON.stringify([options.chromiumPath, options.dataDir]);
  let search = searches.get(key);
  if (!search) {
    search = find(options);
    searches.set(key, search);
    // A failure isn't remembered: a browser may be installed while the service runs.
    search.catch(() => searches.delete(key));
  }
  return search;
}

const searches = new Map<string, Promise<Chromium>>();

async function find(options: ChromiumOptions): Promise<Chromium> {
  if (options.chromiumPath) {
    if (!isExecutable(options.chromiumPath)) {
      throw new Error(
        `CHROMIUM_PATH must be the path of a Chromium program: ${options.chromiumPath} isn't one.`,
      );
    }
    return tried({ executablePath: options.chromiumPath, env: baseEnv(), source: 'CHROMIUM_PATH' });
  }
  for (const executablePath of onPath()) {
    try {
      return await tried({ executablePath, env: baseEnv(), source: 'PATH' });
    } catch {
      // A stub that only says how to install a browser (usual on Ubuntu): the next one may be real.
    }
  }
  const folder = await unpackBundled(options.dataDir);
  return tried({ executablePath: join(folder, 'chromium'), env: bundledEnv(folder), source: 'bundled' });
}

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

function onPath(): string[] {
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).filter(isExecutable);
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

// No GPU; /dev/shm is only 64 MB in a container; fonts' outlines as they are, so that a page breaks the same everywhere.
const startTimeoutMs = 20_000;
const commonArgs = ['--disable-gpu', '--disable-dev-shm-usage', '--font-render-hinting=none'];

async function tried(found: Pick<Chromium, 'executablePath' | 'env' | 'source'>): Promise<Chromium> {
  const isRoot = process.getuid?.() === 0;
  if (!isRoot && (await starts(found, commonArgs)) === true)
    return { ...found, args: commonArgs, sandboxed: true };
  const args = [...commonArgs, '--no-sandbox'];
  const answer = await starts(found, args);
  if (answer === true) return { ...found, args, sandboxed: false };
  throw new Error(
    `The browser ${found.executablePath} doesn't start: ${answer}\n` +
      'Set CHROMIUM_PATH to a Chromium that does, or install one (on Debian: apt-get install chromium).',
  );
}

// Starts it as far as its remote control, then ends it. True, or why it failed.
async function starts(
  found: Pick<Chromium, 'executablePath' | 'env'>,
  args: string[],
): Promise<true | string> {
  const profile = await mkdtemp(join(tmpdir(), 'browser-'));
  const all = [
    '--headless',
    ...args,
    `--user-data-dir=${profile}`,
    '--remote-debugging-port=0',
    'about:blank',
  ];
  const child = spawn(found.executablePath, all, {
    env: found.env,
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  try {
    return await new Promise<true | string>((resolve) => {
      let said = '';
      const end = () => resolve(said.trim().split('\n').slice(-3).join(' ') || 'it said nothing.');
      const timer = setTimeout(end, startTimeoutMs);
      child.once('error', (error) => resolve(error.message));
      child.once('exit', () => {
        clearTimeout(timer);
        end();
      });
      child.stderr.on('data', (chunk: Buffer) => {
        said += chunk.toString('utf8');
        if (said.includes('DevTools listening on')) resolve(true);
      });
    });
  } finally {
    endGroup(child.pid);
    await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
}

// The browser is several processes; they share the group that `detached` gave them.
function endGroup(pid: number | undefined): void {
  if (pid === undefined) return;
  try {
    process.kill(-pid, 'SIGKILL');
  } catch {
    // All have ended.
  }
}

/**
 * Unpacks the bundled browser into a folder named by its version, under a lock. The package itself only knows one
 * fixed shared place, the system's temporary folder; a process of its own is given another one.
 */
async function unpackBundled(dataDir: string): Promise<string> {
  const require = createRequire(import.meta.url);
  const entry = require.resolve('@sparticuz/chromium');
  const parent = join(dataDir, 'chromium');
  const folder = join(parent, `${packageVersion(entry)}-${process.arch}`);
  if (existsSync(folder)) return folder;
  await mkdir(parent, { recursive: true });
  return withFileLock(join(parent, 'unpack.lock'), async () => {
    if (existsSync(folder)) return folder;
    // Unpacked beside and renamed: a folder of the final name is always whole.
    const unfinished = await mkdtemp(join(parent, 'unpacking-'));
    try {
      const code = 'const { default: c } = await import(process.argv[1]); await c.executablePath();';
      const args = ['--input-type=module', '--eval', code, pathToFileURL(entry).href];
      // Told that it is in a bare container, it also unpacks the libraries such a machine lacks.
      const env = { ...process.env, TMPDIR: unfinished, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' };
      await run(process.execPath, args, { env, timeout: 120_000 });
      await writeFile(join(unfinished, 'fonts', 'fonts.conf'), fontsList(join(folder, 'fonts')));
      await chmod(unfinished, 0o755);
      await rename(unfinished, folder);
    } finally {
      await rm(unfinished, { recursive: true, force: true });
    }
    return folder;
  });
}

function packageVersion(entry: string): string {
  for (let folder = dirname(entry); folder !== dirname(folder); folder = dirname(folder)) {
    const manifest = join(folder, 'package.json');
    const content: { name?: string; version?: string } = existsSync(manifest)
      ? JSON.parse(readFileSync(manifest, 'utf8'))
      : {};
    if (content.name === '@sparticuz/chromium' && content.version) return content.version;
  }
  throw new Error(`No package.json of @sparticuz/chromium above ${entry}: run npm install.`);
}

// The system's fonts first; those that came with the browser for a machine that has none.
function fontsList(folder: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <include ignore_missing="yes">/etc/fonts/fonts.conf</include>
  <dir>${folder}</dir>
  <cachedir>${folder}-cache</cachedir>
</fontconfig>
`;
}

function baseEnv(): Record<string, string> {
  const names = ['PATH', 'HOME', 'TMPDIR', 'LANG', 'LC_ALL', 'TZ', 'XDG_RUNTIME_DIR'];
  return Object.fromEntries(names.flatMap((name) => (process.env[name] ? [[name, process.env[name]]] : [])));
}

function bundledEnv(folder: string): Record<string, string> {
  const ours = join(folder, 'al2023', 'lib');
  // Last, so that the system's own libraries are used where it has them.
  const libraries = [process.env.LD_LIBRARY_PATH, '/lib/x86_64-linux-gnu', '/usr/lib64', ours].filter(
    Boolean,
  );
  return { ...baseEnv(), FONTCONFIG_PATH: join(folder, 'fonts'), LD_LIBRARY_PATH: libraries.join(':') };
}
