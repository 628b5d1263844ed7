import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { type Env, EnvError, readEnv } from './env.ts';
import { keepPostgres } from './kept-postgres.ts';
import { ended, keepRunning, killGroup, type Program, startProgram } from './kept-process.ts';
import { openLogger } from './logger.ts';
import { onShutdown } from './shutdown.ts';
import { type Announcement, readAnnouncement, readyText, warningText } from './start-messages.ts';

// Makes the database ready, then ends.
const preparation: Program = { name: 'prepare', file: 'seed/prepare.ts' };
// Run side by side for as long as the service runs.
const services: Program[] = [
  { name: 'api', file: 'apps/api/src/main.ts' },
  { name: 'worker', file: 'apps/worker/src/main.ts' },
];
// The worker finishes the report it is at; see its own limit.
const stopServicesMs = 95_000;
const sayNotReadyAfterMs = 60_000;

/**
 * Runs the whole service: PostgreSQL unless DATABASE_URL is set, the database's preparation, then API and worker.
 * Each is started again when it dies. Prints where to go when everything answers. Ends on Ctrl-C or SIGTERM:
 * API and worker first, PostgreSQL last.
 */
export async function supervise(options: { watch: boolean }): Promise<void> {
  try {
    await run(options);
  } catch (error) {
    console.error(error instanceof EnvError || error instanceof StartError ? error.message : error);
    process.exit(1);
  }
}

/** The start can't go on; the message is for the person who typed the command. */
class StartError extends Error {}

async function run({ watch }: { watch: boolean }): Promise<void> {
  const startedAt = Date.now();
  const env = readEnv();
  const log = openLogger('start', 'warn');
  await requireFreePort(env);

  const stops: (() => Promise<void>)[] = [];
  onShutdown(
    log,
    async () => {
      console.log('Stopping …');
      for (const stop of stops.reverse()) await stop();
    },
    stopServicesMs + 20_000,
  );

  let database: Awaited<ReturnType<typeof keepPostgres>> | undefined;
  if (!env.databaseUrl) {
    console.log(`Starting PostgreSQL in ${join(env.dataDir, 'postgres')}`);
    database = await keepPostgres({ dataDir: env.dataDir, log }, () =>
      console.error('PostgreSQL ended; starting it again.'),
    );
    stops.push(database.stop);
  }
  const childEnv = {
    ...process.env,
    DATA_DIR: env.dataDir,
    DATABASE_URL: env.databaseUrl ?? database?.url,
    // glibc keeps a heap for every thread that draws pictures and gives little back; two are enough.
    MALLOC_ARENA_MAX: process.env.MALLOC_ARENA_MAX ?? '2',
  };
  const logFile = (name: string) => join(env.dataDir, 'logs', `${name}.log`);

  const announcements = await prepareDatabase(childEnv, logFile(preparation.name), stops);

  const kept = services.map((service) =>
    keepRunning(
      { ...service, watch },
      {
        env: childEnv,
        logFile: logFile(service.name),
        onLine: (line) => {
          const text = watch ? line : warningText(service.name, line);
          if (text) console.error(text);
        },
      },
      (code, restartInMs) => {
        console.error(`${service.name} ended (code ${code}); starting it again in ${restartInMs / 1000} s.`);
      },
    ),
  );
  stops.push(async () => {
    await Promise.all(kept.map((service) => service.stop(stopServicesMs)));
  });

  await untilReady(env, logFile);
  const seconds = (Date.now() - startedAt) / 1000;
  console.log(await readyText({ env, announcements, seconds, logFolder: join(env.dataDir, 'logs') }));
}

async function prepareDatabase(
  childEnv: NodeJS.ProcessEnv,
  logFile: string,
  stops: (() => Promise<void>)[],
): Promise<Announcement[]> {
  const announcements: Announcement[] = [];
  const lastLines: string[] = [];
  const child = await startProgram(preparation, {
    env: childEnv,
    logFile,
    onLine: (line) => {
      lastLines.push(line);
      if (lastLines.length > 25) lastLines.shift();
      const announcement = readAnnouncement(line);
      if (!announcement) return;
      announcements.push(announcement);
      if (announcement.text) console.log(announcement.text);
    },
  });
  let stopped = false;
  const stop = async () => {
    stopped = true;
    killGroup(child);
  };
  stops.push(stop);
  const code = await ended(child);
  stops.splice(stops.indexOf(stop), 1);
  // Being stopped, the shutdown ends the process; going on would start what it has to stop.
  if (stopped) await new Promise(() => undefined);
  if (code !== 0) {
    for (const undo of stops.reverse()) await undo();
    throw new StartError(
      `Preparing the database failed:\n${lastLines.join('\n')}\nThe whole log: ${logFile}`,
    );
  }
  return announcements;
}

async function requireFreePort(env: Env): Promise<void> {
  const server = createServer();
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(env.port, env.host, resolve);
    });
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    const where = `port ${env.port} on ${env.host}`;
    if (code === 'EADDRINUSE') {
      throw new StartError(
        `PORT: ${where} is in use. End what uses it, or choose another: PORT=3001 npm start`,
      );
    }
    if (code === 'EACCES')
      throw new StartError(`PORT: ${where} needs rights that this account lacks. Choose another.`);
    throw new StartError(`HOST or PORT: can't listen on ${where} (${code ?? error}).`);
  }
  await new Promise((resolve) => server.close(resolve));
}

async function untilReady(env: Env, logFile: (name: string) => string): Promise<void> {
  const host = env.host === '0.0.0.0' ? '127.0.0.1' : env.host === '::' ? '::1' : env.host;
  const address = `http://${host.includes(':') ? `[${host}]` : host}:${env.port}/health/ready`;
  let complainAt = Date.now() + sayNotReadyAfterMs;
  for (;;) {
    const answer = await ask(address);
    if (answer === 'ready') return;
    if (Date.now() > complainAt) {
      console.error(
        `Not ready yet: ${answer}. See ${services.map(({ name }) => logFile(name)).join(' and ')}.`,
      );
      complainAt = Date.now() + sayNotReadyAfterMs;
    }
    await sleep(100);
  }
}

// 'ready', or what isn't.
async function ask(address: string): Promise<string> {
  try {
    const response = await fetch(address, { signal: AbortSignal.timeout(10_000) });
    const body: { parts?: Record<string, string> } = await response.json();
    if (response.ok) return 'ready';
    const failed = Object.entries(body.parts ?? {}).filter(([, state]) => state !== 'ok');
    return failed.map(([part]) => part).join(', ') || `${address} answers ${response.status}`;
  } catch {
    return `${address} doesn't answer`;
  }
}
