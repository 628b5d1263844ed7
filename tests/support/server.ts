import { mkdtemp, rm } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildApp } from '@garboard/api/app';
import type { Deps } from '@garboard/api/http/deps';
import type { JobData } from '@garboard/contract/jobs';
import { type Database, openDatabase } from '@garboard/db/database';
import { openLogger } from '@garboard/platform/logger';
import { type ObjectStore, openObjectStore } from '@garboard/platform/object-store';
import { openQueue, queueConnection } from '@garboard/platform/queue';
import { type Signed, testSecret } from '@garboard/seed/builders';
import type { FastifyInstance } from 'fastify';
import supertest from 'supertest';
import { freshDatabase } from './database.ts';

export interface TestServer {
  app: FastifyInstance;
  db: Database;
  databaseUrl: string;
  store: ObjectStore;
  dataDir: string;
  url: string;
  /** Requests as one person, or as a stranger. */
  as(person: Signed | null): Caller;
  close(): Promise<void>;
}

type Agent = ReturnType<typeof supertest>;
export type Caller = Record<
  'get' | 'post' | 'put' | 'patch' | 'delete',
  (path: string) => ReturnType<Agent['get']>
>;

/**
 * The real server on a real database and a real folder, listening on a free port of loopback.
 *
 * @param options.wrap what stands between the server and its database, such as `undone` of tests/isolation
 */
export async function startServer(
  options: Pick<Deps, 'metrics' | 'draining'> & {
    portalDir?: string;
    clock?: () => Date;
    /** The address people use, when it isn't a plain one of this machine. */
    publicUrl?: string;
    /** Where its log goes; nowhere unless given. */
    log?: Deps['log'];
    /** Whether webhooks may go to loopback; yes unless given. */
    allowPrivate?: boolean;
    wrap?: (db: Database) => Database;
    /** Whether each answer is held against its schema; yes unless given, or a browser is served, which waits for it. */
    checkAnswers?: boolean;
  } = {},
): Promise<TestServer> {
  const database = await freshDatabase();
  const dataDir = await mkdtemp(join(tmpdir(), 'garboard-test-'));
  const db = openDatabase(database.url, 6);
  const store = await openObjectStore(pathToFileURL(join(dataDir, 'objects')).href, dataDir);
  const previews = openQueue<JobData<'finding.preview'>>(
    queueConnection({ databaseUrl: database.url }),
    'previews',
  );
  const app = await buildApp({
    env: {
      publicUrl: options.publicUrl ?? 'http://127.0.0.1:3000',
      dataDir,
      secret: testSecret,
      webhookAllowPrivate: options.allowPrivate ?? true,
    },
    db: options.wrap ? options.wrap(db) : db,
    store,
    log: options.log ?? openLogger('test', 'fatal'),
    clock: options.clock ?? (() => new Date()),
    previews,
    metrics: options.metrics,
    draining: options.draining,
    probes: {
      database: async () => {
        await db.prisma.$queryRaw`SELECT 1`;
      },
      objectStore: () => store.check(),
    },
    checkAnswers: options.checkAnswers ?? !options.portalDir,
    portalDir: options.portalDir ?? null,
  });
  await app.listen({ port: 0, host: '127.0.0.1' });
  const { port } = app.server.address() as AddressInfo;
  const agent = supertest(app.server);
  return {
    app,
    db,
    databaseUrl: database.url,
    store,
    dataDir,
    url: `http://127.0.0.1:${port}`,
    as(person) {
      const sign = (method: keyof Caller) => (path: string) => {
        const test = agent[method](path);
        return person ? test.set('authorization', `Bearer ${person.token}`) : test;
      };
      return {
        get: sign('get'),
        post: sign('post'),
        put: sign('put'),
        patch: sign('patch'),
        delete: sign('delete'),
      };
    },
    async close() {
      await app.close();
      await previews.close();
      await db.close();
      await database.drop();
      await rm(dataDir, { recursive: true, force: true });
    },
  };
}
