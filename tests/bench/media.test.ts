// Every media part of the bench runs, at a size that says nothing about speed.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type FreshDatabase, freshDatabase } from '../support/database.ts';
import { measureDerivatives } from './derivatives.ts';
import { openBench, type Result, tableOf } from './harness.ts';
import { type MediaOffice, makePhoto, openMediaOffice } from './media-office.ts';
import { measurePortal } from './portal.ts';
import { measureQueues } from './queue.ts';
import { measureReports } from './reports.ts';
import { measureUploads } from './uploads.ts';

let database: FreshDatabase;
let office: MediaOffice;
let photo: Buffer;

beforeAll(async () => {
  database = await freshDatabase();
  office = await openMediaOffice(database.url);
  photo = await makePhoto(640, 480);
}, 120_000);
afterAll(async () => {
  await office?.close();
  await database?.drop();
}, 120_000);

async function found(part: string, measure: (bench: ReturnType<typeof openBench>) => Promise<void>) {
  const all = { results: [] as Result[], notes: {} };
  await measure(openBench(part, { sizes: [1], rounds: 1, seconds: 1 }, all));
  expect(tableOf(all.results).split('\n')).toHaveLength(all.results.length + 2);
  for (const result of all.results) {
    expect(Number.isFinite(result.ours), `${part}: ${result.what}`).toBe(true);
    expect(result.rounds).toBe(1);
  }
  return new Map(all.results.map((result) => [result.what, result]));
}

describe('the media benches', { timeout: 600_000 }, () => {
  it('uploads photos through the real process and through a bare one', async () => {
    const results = await found('uploads', (bench) => measureUploads(bench, office, { photo, requests: 1 }));
    expect(results.get('ten photos a request, as the portal')?.ratio).toBeGreaterThan(0);
  });

  it('makes sizes', async () => {
    const results = await found('derivatives', (bench) =>
      measureDerivatives(bench, office, { photo, photos: 2 }),
    );
    expect([...results.values()].every(({ ratio }) => (ratio ?? 0) > 0)).toBe(true);
  });

  it('moves jobs', async () => {
    const sizes = { postgres: 40, redis: 40, relayed: 40 };
    const results = await found('queue', (bench) => measureQueues(bench, office, sizes));
    expect(results.get('on PostgreSQL')?.ratio).toBeGreaterThan(0);
    expect(results.get('outbox, relay and queue on postgres')?.ours).toBeGreaterThan(0);
  });

  it('makes reports, in this process and in a worker of its own', async () => {
    const results = await found('reports', (bench) =>
      measureReports(bench, office, { photo, photos: [3], inARow: 2 }),
    );
    expect(results.get('a report from frozen record to sealed file')?.ratio).toBeGreaterThan(0);
    expect(results.get('the file')?.ours).toBeGreaterThan(0.02);
  });

  it('opens the built portal as a telephone does; its programs come compressed', async () => {
    const results = await found('portal', (bench) =>
      measurePortal(bench, office, { photo, findings: 2, deskPhotos: 12, unhindered: true }),
    );
    expect(results.get('first finding shown on a telephone')?.ours).toBeGreaterThan(0);
    expect(results.get('sent until the first finding')?.ours).toBeLessThan(400);
  });
});
