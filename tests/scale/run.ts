import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { buildJpeg } from '@garboard/seed/builders';
import { SMTPServer } from 'smtp-server';
import { addSurvey, signIn, writeSurvey } from '../jobs/survey-rows.ts';
import { startBalancer } from '../support/balancer.ts';
import type { FreshDatabase } from '../support/database.ts';
import { newInstallation } from '../support/installation.ts';
import { s3Account, startS3Server } from '../support/s3-server.ts';
import { type Accounts, settleAccounts } from './accounts.ts';
import { type Acknowledged, doJob, type Job } from './clients.ts';
import { seeded, startFleet } from './fleet.ts';

export interface ScaleRun {
  reports: number;
  /** Of all surveys together. */
  uploads: number;
  /** People at work at once. */
  clients: number;
  kills: number;
  /** Time between two kills at least, in milliseconds; up to twice as long. */
  betweenKillsMs: number;
  seed: number;
  redisUrl: string;
  /** Where the S3 server keeps its bucket. */
  folder: string;
  /** A migrated database, outside vitest. */
  database?: FreshDatabase;
  say: (line: string) => void;
}

export interface ScaleOutcome extends Accounts {
  reports: number;
  photos: number;
  kills: readonly string[];
  sentAgain: number;
  /** People whom one link invited. */
  invitations: number;
  /** Messages that came once more, as their worker was killed between the server's yes and its own note. */
  sentTwice: number;
  seconds: number;
}

const size = { apis: 2, workers: 3 };
const firms = 4;

/**
 * Two api and three worker processes on Redis and an S3 server, at work for several firms, while processes are killed
 * at moments that the seed decides. Answers with what everything came to.
 */
export async function runScale(run: ScaleRun): Promise<ScaleOutcome> {
  const chance = seeded(run.seed);
  run.say(`seed ${run.seed}`);
  const mails = await startMailServer();
  const s3 = await startS3Server(join(run.folder, 'bucket'));
  // For the checks, which read the store from this process.
  const outer = Object.fromEntries(Object.keys(s3Account).map((name) => [name, process.env[name]]));
  Object.assign(process.env, s3Account);
  const balancer = await startBalancer();
  const installation = await newInstallation(
    {
      ...s3Account,
      OBJECT_STORE_URL: s3.url,
      REDIS_URL: run.redisUrl,
      SMTP_URL: `smtp://127.0.0.1:${mails.port}`,
      LOG_LEVEL: 'info',
    },
    run.database,
  );
  try {
    const jobs = await orders(installation.db, run);
    const fleet = await startFleet(installation, balancer, size, chance);
    run.say(`${size.apis} api and ${size.workers} worker processes serve`);
    const begun = Date.now();
    const done: Acknowledged = { photos: [], reports: [], owners: [], sentAgain: 0, wrong: [] };
    const jpeg = await buildJpeg(7, { width: 480, height: 360 });
    const waiting = [...jobs];
    const client = async () => {
      for (let job = waiting.shift(); job; job = waiting.shift()) {
        await doJob(balancer.url, job, jpeg, done).catch((error: unknown) => done.wrong.push(String(error)));
        if (done.reports.length % 20 === 0)
          run.say(
            `${done.reports.length} reports, ${done.photos.length} photos, ${fleet.kills.length} kills`,
          );
      }
    };
    const over = new AbortController();
    const killing = killNowAndThen(fleet, run, chance, over.signal);
    await Promise.all(Array.from({ length: run.clients }, client));
    over.abort();
    await killing;
    await fleet.whole();
    const accounts = await settleAccounts(installation, done);
    for (const address of done.owners) {
      const count = mails.invitations.get(address)?.size ?? 0;
      if (count !== 1) accounts.wrong.push(`${address} was invited by ${count} links.`);
    }
    if (mails.messages() - mails.invitations.size > fleet.kills.length)
      accounts.wrong.push(`${mails.messages()} messages for ${mails.invitations.size} invitations.`);
    if (done.wrong.length + accounts.wrong.length > 0) run.say(fleet.printed().slice(-20_000));
    return {
      ...accounts,
      wrong: [...done.wrong, ...accounts.wrong],
      reports: done.reports.length,
      photos: done.photos.length,
      kills: fleet.kills,
      sentAgain: done.sentAgain,
      invitations: mails.invitations.size,
      sentTwice: mails.messages() - mails.invitations.size,
      seconds: Math.round((Date.now() - begun) / 1_000),
    };
  } finally {
    await balancer.close();
    await installation.close();
    await s3.stop();
    await mails.close();
    for (const [name, value] of Object.entries(outer))
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
  }
}

/** Surveys of several firms, each with its share of the photos. */
async function orders(db: Parameters<typeof writeSurvey>[0], run: ScaleRun): Promise<Job[]> {
  const offices = await Promise.all(
    Array.from({ length: Math.min(firms, run.reports) }, async () => {
      const first = await writeSurvey(db, 3);
      return { first, token: await signIn(db, first.personId) };
    }),
  );
  const jobs: Job[] = [];
  for (let n = 0; n < run.reports; n += 1) {
    const office = offices[n % offices.length];
    if (!office) throw new Error('No office.');
    const rows =
      n < offices.length
        ? office.first
        : await addSurvey(db, office.first, { findings: 3, number: `2026-${String(1_000 + n)}` });
    const [from, to] = [n, n + 1].map((k) => Math.floor((run.uploads * k) / run.reports));
    const owner = { name: 'Ada Holm', email: `owner-${n}@holm.example` };
    jobs.push({ ...rows, token: office.token, uploads: (to ?? 0) - (from ?? 0), owner });
  }
  return jobs;
}

async function killNowAndThen(
  fleet: Awaited<ReturnType<typeof startFleet>>,
  run: ScaleRun,
  chance: () => number,
  over: AbortSignal,
): Promise<void> {
  for (let n = 0; n < run.kills && !over.aborted; n += 1) {
    await sleep(run.betweenKillsMs * (1 + chance()), undefined, { signal: over }).catch(() => undefined);
    if (!over.aborted) run.say(`killed ${await fleet.killOne()}`);
  }
}

/** A real mail server that notes which invitations came to whom. */
async function startMailServer() {
  const invitations = new Map<string, Set<string>>();
  let messages = 0;
  const smtp = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onData(stream, session, done) {
      let head = '';
      stream.on('data', (chunk: Buffer) => {
        if (head.length < 4_000) head += chunk;
      });
      stream.once('end', () => {
        // A message with a link has the link's id and a part that changes with its secret.
        const link = /^message-id:\s*<([0-9a-f-]{36})\.[0-9a-f]{12}@/im.exec(head)?.[1];
        for (const { address } of session.envelope.rcptTo) {
          if (!link) continue;
          messages += 1;
          invitations.set(address, (invitations.get(address) ?? new Set()).add(link));
        }
        done();
      });
    },
  });
  // Processes that are killed while they send leave their connection broken.
  smtp.on('error', () => undefined);
  smtp.listen(0, '127.0.0.1');
  await once(smtp.server, 'listening');
  return {
    invitations,
    messages: () => messages,
    port: (smtp.server.address() as AddressInfo).port,
    close: () => new Promise<void>((closed) => smtp.close(() => closed())),
  };
}
