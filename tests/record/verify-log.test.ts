import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { recordEvent } from '@garboard/core/events/record-event';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, streamOf } from '@garboard/seed/builders';
import { Client } from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { contextFor } from './events.ts';

const run = promisify(execFile);
let server: TestServer;
let owner: Client;
let folder: string;
let firmId: string;
let sha256: string;

beforeAll(async () => {
  server = await startServer();
  owner = new Client({ connectionString: server.databaseUrl });
  await owner.connect();
  folder = await mkdtemp(join(tmpdir(), 'garboard-heads-'));
  firmId = (await buildFirm(server.db, ['principal'])).id;
  const staged = await server.store.stage(streamOf(Buffer.from('a survey, issued')), { maxBytes: 1_000 });
  await staged.keep();
  sha256 = staged.sha256;
  await inTransaction(server.db, [firmId], async (tx) => {
    const [vesselId, surveyId] = [newId(), newId()];
    await tx.vessel.create({ data: { id: vesselId, firmId, name: 'Pintle' } });
    await tx.survey.create({
      data: { id: surveyId, firmId, vesselId, number: '2026-0001', purpose: 'condition' },
    });
    const report = { kind: 'full', revision: 1, snapshot: {}, requestedBy: 'x', sha256 };
    await tx.report.create({ data: { id: newId(), firmId, surveyId, ...report } });
    for (let i = 0; i < 3; i += 1) {
      await recordEvent(contextFor(tx, [firmId]), {
        firmId,
        surveyId,
        kind: 'survey.edited',
        role: 'office',
      });
    }
  });
});
afterAll(async () => {
  await owner?.end();
  await server?.close();
  await rm(folder, { recursive: true, force: true });
});

async function verifyLog(...args: string[]) {
  const env = {
    ...process.env,
    DATABASE_URL: server.databaseUrl,
    DATA_DIR: server.dataDir,
    OBJECT_STORE_URL: pathToFileURL(join(server.dataDir, 'objects')).href,
  };
  const command = ['--import', 'tsx', 'packages/core/bin/verify-log.ts', ...args];
  return run(process.execPath, command, { env }).then(
    ({ stdout }) => ({ code: 0, said: stdout }),
    (error: { code: number; stderr: string }) => ({ code: error.code, said: error.stderr }),
  );
}

test('whole, a file changed, a file missing, an entry changed, a record rewritten from its beginning', async () => {
  const heads = join(folder, 'heads.json');
  const whole = await verifyLog('--heads', heads);
  expect(whole).toMatchObject({ code: 0, said: expect.stringContaining('3 entries, unbroken; last ') });
  expect(whole.said).toContain('1 files, each as it was kept');

  const path = await server.store.localFile(sha256);
  const bytes = await readFile(path);
  await writeFile(path, 'a survey, forged');
  const told = (problem: string) => `Broken. File ${sha256}, named by reports.sha256. ${problem}`;
  expect(await verifyLog()).toMatchObject({
    code: 1,
    said: expect.stringContaining(told('Its content was changed.')),
  });
  await rm(path);
  expect(await verifyLog()).toMatchObject({ code: 1, said: expect.stringContaining(told('It is missing.')) });
  await writeFile(path, bytes);
  expect(await verifyLog('--heads', heads)).toMatchObject({ code: 0 });

  await owner.query(
    `UPDATE events SET kind = 'survey.moved' WHERE id IN (
    SELECT event_id FROM event_links WHERE firm_id = $1 AND seq = 2)`,
    [firmId],
  );
  const broken = await verifyLog('--no-files');
  expect(broken).toMatchObject({ code: 1, said: expect.stringContaining('entry 2 (event ') });

  // Whoever owns the database can chain everything anew; what was noted elsewhere says so.
  await owner.query('DELETE FROM event_links WHERE firm_id = $1', [firmId]);
  await owner.query('DELETE FROM event_heads WHERE firm_id = $1', [firmId]);
  await owner.query('SELECT garboard_lock_heads(ARRAY[$1]::uuid[])', [firmId]);
  await owner.query(
    'SELECT garboard_link_event(e) FROM (SELECT e FROM events e WHERE firm_id = $1 ORDER BY id) AS x',
    [firmId],
  );
  expect(await verifyLog('--no-files')).toMatchObject({ code: 0 });
  const rewritten = await verifyLog('--heads', heads);
  expect(rewritten).toMatchObject({
    code: 1,
    said: expect.stringContaining('was rewritten at or before it'),
  });
  expect(await verifyLog('--nonsense')).toMatchObject({ code: 2 });
}, 180_000);
