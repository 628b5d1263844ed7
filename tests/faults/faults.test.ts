import { afterAll, beforeAll, expect, test } from 'vitest';
import { uploadsBrokenOff } from './faults/clients.ts';
import { databaseStopped } from './faults/database.ts';
import { killed } from './faults/kills.ts';
import { begin, endure, type Run, rest } from './run.ts';

// The short form of `npm run faults`, on whatever machine: how soon all is ready again is measured there, not here.
const patient = { readyWithinMs: 120_000 };

let run: Run;
beforeAll(async () => {
  run = await begin('laptop', { seed: 1, quiet: true, ...patient });
}, 180_000);
afterAll(() => run?.stop(), 120_000);

test('what was acknowledged survives kills, a database that was away and broken uploads, and nothing is done twice', async () => {
  await endure(run, killed(['Chromium', 'worker', 'api']));
  await endure(run, databaseStopped(2_000));
  await endure(run, uploadsBrokenOff);
  await rest(run, 0);
  expect([...run.ledger.violations.keys()]).toEqual([]);
  expect(run.ledger.counts()).toMatchObject({ report: expect.any(Number), issued: expect.any(Number) });
  expect(run.ledger.acknowledged).toBeGreaterThan(15);
  const { api, worker } = run.installation.services;
  expect({ api: api.ownEnds, worker: worker.ownEnds }).toEqual({ api: [], worker: [] });
}, 420_000);
