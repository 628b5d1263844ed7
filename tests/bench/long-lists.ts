// The lists over many surveys at their full size, over HTTP, as people use them. Usage: npm run bench
import { mkdtemp, rm } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { buildApp } from '@garboard/api/app';
import { openDatabase } from '@garboard/db/database';
import { migrate } from '@garboard/db/migrate';
import { startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { openLogger } from '@garboard/platform/logger';
import { openObjectStore } from '@garboard/platform/object-store';
import { buildFirm, buildPerson, testSecret } from '@garboard/seed/builders';
import { loadLongLists } from '../support/long-lists.ts';

const log = openLogger('bench', 'fatal');
const dataDir = await mkdtemp(join(tmpdir(), 'garboard-bench-'));
const server = await startEmbeddedPostgres({ dataDir, log, throwaway: true });
await migrate({ url: server.url });
const db = openDatabase(server.url, 6);
const busy = await buildFirm(db, ['office', 'surveyor']);
const covers = [await buildFirm(db, ['surveyor']), await buildFirm(db, ['surveyor'])] as const;
const insurer = await buildPerson(db, { name: 'Cover' });
const owner = await buildPerson(db);
const sizes = { jobs: 50_000, covered: 5000, boats: 400 };
const today = new Date().toISOString().slice(0, 10);
await loadLongLists(
  server.url,
  sizes,
  {
    busyFirm: busy.id,
    surveyor: busy.surveyor.id,
    coverFirms: [covers[0].id, covers[1].id],
    insurer: insurer.id,
    owner: owner.id,
  },
  today,
);
const app = await buildApp({
  env: { publicUrl: 'http://127.0.0.1:3000', dataDir, secret: testSecret, webhookAllowPrivate: false },
  db,
  store: await openObjectStore(pathToFileURL(join(dataDir, 'objects')).href, dataDir),
  log,
  clock: () => new Date(),
  previews: { add: () => Promise.reject(new Error('No previews here.')) },
  probes: {},
  portalDir: null,
});
await app.listen({ port: 0, host: '127.0.0.1' });
const base = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`;

async function measure(what: string, token: string, path: string, times = 15): Promise<void> {
  const took: number[] = [];
  let note = '';
  for (let i = 0; i < times; i++) {
    const begun = performance.now();
    const answer = await fetch(base + path, { headers: { authorization: `Bearer ${token}` } });
    const body = await answer.text();
    took.push(performance.now() - begun);
    if (!answer.ok) throw new Error(`${path}: ${answer.status} ${body}`);
    note = /"total":\d+/.exec(body)?.[0] ?? `${body.length} characters`;
  }
  const [first] = took;
  const sorted = [...took].sort((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor(sorted.length * share)] ?? 0).toFixed(0);
  console.log(
    `${what}: first ${first?.toFixed(0)} ms, median ${at(0.5)} ms, slowest ${at(0.99)} ms (${note})`,
  );
}

try {
  const r = '/v1/recommendations';
  await measure('insurer, undecided, soonest due', insurer.token, `${r}?decided=no`);
  await measure('insurer, all', insurer.token, r);
  await measure('insurer, waiting for me, longest first', insurer.token, `${r}?waitingFor=me&sort=sent`);
  await measure('insurer, overdue, by vessel', insurer.token, `${r}?due=overdue&sort=vessel`);
  await measure('insurer, undecided, by urgency', insurer.token, `${r}?decided=no&sort=urgency`);
  await measure('insurer, words', insurer.token, `${r}?decided=no&q=hose%207`);
  await measure('insurer, counts', insurer.token, `${r}/counts`);
  await measure('insurer, boats', insurer.token, `${r}/vessels`);
  await measure('insurer, boats with evidence', insurer.token, `${r}/vessels?only=waiting-for-me`);
  await measure('insurer, CSV of all', insurer.token, `${r}.csv`, 3);
  await measure('firm, recommendations undecided', busy.office.token, `${r}?decided=no`);
  await measure('firm, counts of recommendations', busy.office.token, `${r}/counts`);
  await measure('firm, open jobs, soonest first', busy.office.token, '/v1/jobs?closed=no');
  await measure('firm, all jobs, newest first', busy.office.token, '/v1/jobs?sort=newest');
  await measure('firm, jobs by vessel', busy.office.token, '/v1/jobs?sort=vessel');
  await measure('firm, jobs waiting for the owner', busy.office.token, '/v1/jobs?waitingFor=owner');
  await measure('firm, jobs by words', busy.office.token, '/v1/jobs?q=2026-0042');
  await measure('firm, counts of jobs', busy.office.token, '/v1/jobs/counts');
  await measure('firm, CSV of jobs', busy.office.token, '/v1/jobs.csv', 3);
} finally {
  await app.close();
  await db.close();
  await server.stop();
  await rm(dataDir, { recursive: true, force: true });
}
