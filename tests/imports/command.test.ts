import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildFirm, buildJpeg, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';

let server: TestServer;
let worker: TestWorker;
let surveyor: Signed;
let folder: string;
let survey: { id: string; number: string };

beforeAll(async () => {
  server = await startServer();
  worker = await startTestWorker(server);
  const firm = await buildFirm(server.db, ['surveyor']);
  surveyor = firm.surveyor;
  const api = server.as(surveyor);
  const wish = { name: 'Bringing in', access: 'write', firmId: firm.id, role: 'surveyor' };
  const key = (await api.post('/v1/api-keys').send(wish).expect(201)).body.token;
  const vessel = (await api.post('/v1/vessels').send({ name: 'Sedge' }).expect(201)).body;
  survey = (await api.post('/v1/surveys').send({ vesselId: vessel.id, purpose: 'insurance' }).expect(201))
    .body;
  folder = await mkdtemp(join(tmpdir(), 'garboard-command-'));
  await mkdir(join(folder, 'trip', 'deck'), { recursive: true });
  await writeFile(join(folder, 'key'), `${key}\n`);
  await writeFile(join(folder, 'trip', 'deck', '1.jpg'), await buildJpeg(51, { width: 320, height: 240 }));
  await writeFile(join(folder, 'trip', '2.JPG'), await buildJpeg(52, { width: 320, height: 240 }));
  // A link is not followed, wherever it leads.
  await symlink('/etc/hostname', join(folder, 'trip', 'deck', '3.jpg'));
  const sheet =
    'Title;System;Urgency;Photos\nHose;gas;before use;1.jpg\nRail;deck;note;2.jpg\nMast;mast;soon;3.jpg\n';
  await writeFile(join(folder, 'trip', 'findings.csv'), sheet);
}, 120_000);
afterAll(async () => {
  await worker?.close();
  await server?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Runs the command; its exit status and all that it said. */
async function run(...more: string[]): Promise<{ status: number; said: string }> {
  const at = ['--folder', join(folder, 'trip'), '--key-file', join(folder, 'key'), '--url', server.url];
  const args = ['--import', 'tsx', 'packages/contract/bin/import-survey.ts', ...at, ...more];
  return new Promise((resolve) => {
    execFile(process.execPath, args, { encoding: 'utf8' }, (error, out, err) => {
      resolve({ status: error ? Number(error.code) : 0, said: out + err });
    });
  });
}
const counts = async () => (await server.as(surveyor).get(`/v1/surveys/${survey.id}`).expect(200)).body;

describe('npm run import-survey', { timeout: 120_000 }, () => {
  it('says what would come in and stops at rows that can’t', async () => {
    const { status, said } = await run('--survey', survey.number);
    expect(said).toContain('3 rows: 2 become findings, 0 are here already, 1 can’t come in.');
    expect(said).toContain('Line 4, System: “mast” is no system of the boat');
    expect(said).toContain('Named and not there: 3.jpg.');
    expect(status).toBe(1);
    expect(await readFile(join(folder, 'trip', 'findings-left-out.csv'), 'utf8')).toContain('“mast”');
    await rm(join(folder, 'trip', 'findings-left-out.csv'));
    expect(await counts()).toMatchObject({ findingCount: 0, photoCount: 0 });
  });

  it('brings in the others, and the same again makes no doubles', async () => {
    const args = [
      '--survey',
      survey.id,
      '--csv',
      join(folder, 'trip', 'findings.csv'),
      '--leave-out-bad-rows',
    ];
    const first = await run(...args);
    expect(first.said).toContain('Brought in: 2 findings, 2 photos.');
    expect(first.status).toBe(1);
    const again = await run(...args);
    expect(again.said).toContain('Brought in: 0 findings, 2 photos.');
    expect(await counts()).toMatchObject({ findingCount: 2, photoCount: 2, state: 'drafting' });
  });

  it('refuses what it can’t do in a sentence', async () => {
    const unknown = await run('--survey', '1999-0001', '--dry-run');
    expect(unknown).toEqual({
      status: 2,
      said: 'There is no survey 1999-0001, or this key may not see it.\n',
    });
    expect((await run('--colour', 'red')).said).toContain('Usage:');
  });
});
