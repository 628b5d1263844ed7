import { inTransaction } from '@garboard/db/database';
import { buildJpeg } from '@garboard/seed/builders';
import { importSurveyJob } from '@garboard/worker/jobs/import-survey';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { openDesk } from './desk.ts';
import { oddZip, packed } from './zips.ts';

let server: TestServer;
let desk: Awaited<ReturnType<typeof openDesk>>;
let jpegs: Buffer[];

beforeAll(async () => {
  server = await startServer();
  desk = await openDesk(server);
  jpegs = await Promise.all([31, 32, 33, 34].map((seed) => buildJpeg(seed)));
}, 60_000);
afterAll(() => server.close());

const jpeg = (at: number): Buffer => jpegs[at] as Buffer;
const head = 'Title,System,Urgency,Photos\n';

describe('a ZIP of photos with a sheet', () => {
  it('becomes a draft survey: findings with their photos, and the photos that no row names', async () => {
    const surveyId = await desk.newSurvey();
    const sheet = `${head}Hose,gas,Before use,deck/a.JPG; B.jpg\nAnode,hull,next lay-up,c\nRail,deck,note,gone.jpg\n`;
    const zip = await packed({
      'survey/deck/a.jpg': jpeg(0),
      'survey/b.jpg': jpeg(1),
      'survey/c.jpg': jpeg(2),
      'survey/loose.jpg': jpeg(3),
      'survey/findings.csv': sheet,
      'survey/notes.docx': 'x',
      '__MACOSX/._a.jpg': 'x',
      'survey/.DS_Store': 'x',
    });
    const looked = await desk.look({ 'survey.zip': zip }, 201, surveyId);
    expect(looked).toMatchObject({
      ...{ state: 'checked', fileName: 'findings.csv', zipName: 'survey.zip' },
      counts: { rows: 3, findings: 3, leftOut: 0, photos: 4, photosDone: 0, photosNamed: 3 },
      missingPhotos: ['gone.jpg'],
      remarks: ['Not photos, so they stay out: survey/notes.docx.'],
    });
    expect(looked.rows.map((row: { photos: number }) => row.photos)).toEqual([2, 1, 0]);
    expect(await desk.findings(surveyId)).toEqual([]);

    const done = await desk.bring(looked.id);
    expect(done).toMatchObject({ state: 'done', counts: { findings: 3, photos: 4, photosDone: 4 } });
    const findings = await desk.findings(surveyId);
    const photos = (await desk.surveyor.get(`/v1/surveys/${surveyId}/photos?limit=200`).expect(200)).body
      .items;
    const named = new Map(photos.map((p: { id: string; fileName: string }) => [p.id, p.fileName]));
    expect(
      findings.map((f: { title: string; photoIds: string[] }) => [
        f.title,
        f.photoIds.map((id) => named.get(id)),
      ]),
    ).toEqual([
      ['Hose', ['a.jpg', 'b.jpg']],
      ['Anode', ['c.jpg']],
      ['Rail', []],
    ]);
    expect([...named.values()].sort()).toEqual(['a.jpg', 'b.jpg', 'c.jpg', 'loose.jpg']);
    const survey = (await desk.surveyor.get(`/v1/surveys/${surveyId}`).expect(200)).body;
    expect(survey).toMatchObject({ state: 'drafting', findingCount: 3, photoCount: 4 });
    const events = (await desk.surveyor.get(`/v1/surveys/${surveyId}/events`).expect(200)).body.items;
    expect(events[0].sentence ?? events[0].text ?? JSON.stringify(events[0])).toContain(
      'Brought in from findings.csv: 3 findings, 4 photos',
    );
    // The ZIP itself is kept no longer than it is needed.
    const left = await inTransaction(server.db, [desk.firm.id], (tx) =>
      tx.outbox.count({ where: { job: 'object.collect' } }),
    );
    expect(left).toBeGreaterThan(0);
  });

  it('brought in twice makes no doubles, and adds photos that were missing', async () => {
    const surveyId = await desk.newSurvey();
    const sheet = `${head}Hose,gas,Before use,a.jpg\nHose,gas,Before use,b.jpg\n`;
    const first = await desk.look(
      { 's.csv': sheet, 'a.zip': await packed({ 'a.jpg': jpeg(0) }) },
      201,
      surveyId,
    );
    expect(first.rows[1].remarks.map((r: { detail: string }) => r.detail)).toContain(
      'This row stands in the sheet more than once; each becomes a finding.',
    );
    await desk.bring(first.id);
    const zip = await packed({ 'x/a.jpg': jpeg(0), 'x/b.jpg': jpeg(1) });
    const again = await desk.look({ 's.csv': sheet, 'a.zip': zip }, 201, surveyId);
    expect(again).toMatchObject({ counts: { findings: 0, there: 2, leftOut: 0 }, missingPhotos: [] });
    expect(again.rows[0].finding.number).toBe(1);
    expect(await desk.bring(again.id)).toMatchObject({ state: 'done', counts: { findings: 0, there: 2 } });
    const findings = await desk.findings(surveyId);
    expect(findings.map((f: { photoIds: string[] }) => f.photoIds.length)).toEqual([1, 1]);
    const survey = (await desk.surveyor.get(`/v1/surveys/${surveyId}`).expect(200)).body;
    expect(survey).toMatchObject({ findingCount: 2, photoCount: 2 });
    // A finding that was deleted may be brought in anew.
    await desk.surveyor.delete(`/v1/findings/${findings[0].id}`).expect(204);
    const anew = await desk.look({ 's.csv': sheet }, 201, surveyId);
    expect(anew.counts).toMatchObject({ findings: 1, there: 1 });
    expect(await desk.bring(anew.id)).toMatchObject({ counts: { findings: 1, there: 1 } });
  });

  it('goes on after a worker died among the photos, and makes nothing twice', async () => {
    const surveyId = await desk.newSurvey();
    const zip = await packed({ 'a.jpg': jpeg(0), 'b.jpg': jpeg(1), 'c.jpg': jpeg(2) });
    const { id } = await desk.look({ 's.csv': `${head}Hose,gas,note,c.jpg\n`, 'a.zip': zip }, 201, surveyId);
    await desk.surveyor.post(`/v1/imports/${id}/start`).send({}).expect(202);
    // Its database goes away between the photos and the findings.
    let calls = 0;
    const dying = {
      ...desk.deps,
      clock: () => {
        calls += 1;
        if (calls > 5) throw new Error('the worker died');
        return new Date();
      },
    };
    const job = { firmId: desk.firm.id, importId: id };
    await expect(importSurveyJob(dying, job, { lastAttempt: false })).rejects.toThrow('the worker died');
    expect((await desk.surveyor.get(`/v1/imports/${id}`).expect(200)).body.state).toBe('running');
    await importSurveyJob(desk.deps, job, { lastAttempt: true });
    await importSurveyJob(desk.deps, job, { lastAttempt: true });
    const survey = (await desk.surveyor.get(`/v1/surveys/${surveyId}`).expect(200)).body;
    expect(survey).toMatchObject({ findingCount: 1, photoCount: 3 });
    expect((await desk.findings(surveyId))[0].photoIds).toHaveLength(1);
  });

  it('names photos that can’t be read, and takes the others', async () => {
    const surveyId = await desk.newSurvey();
    const zip = await packed({ 'a.jpg': jpeg(0), 'b.jpg': 'no picture', 'c.jpg': jpeg(2).subarray(0, 900) });
    const { id } = await desk.look(
      { 's.csv': `${head}Hose,gas,note,a.jpg;b.jpg\n`, 'a.zip': zip },
      201,
      surveyId,
    );
    const done = await desk.bring(id);
    expect(done.state).toBe('done');
    expect(done.refusedPhotos.map(({ name }) => name)).toEqual(['b.jpg', 'c.jpg']);
    expect(done.refusedPhotos[0]?.problem).toContain('holds no picture that we know');
    expect((await desk.findings(surveyId))[0].photoIds).toHaveLength(1);
  });
});

describe('ZIPs that are refused, each with a sentence', () => {
  const sheet = `${head}Hose,gas,note,\n`;
  it.each<[string, Buffer, string]>([
    ['a name that leads up', oddZip([{ name: '../../etc/a.jpg' }]), 'leads out of its folder'],
    [
      'a name that leads up in the Windows way',
      oddZip([{ name: '..\\..\\a.jpg' }]),
      'leads out of its folder',
    ],
    ['an absolute name', oddZip([{ name: '/etc/a.jpg' }]), 'leads out of its folder'],
    ['a drive', oddZip([{ name: 'C:/a.jpg' }]), 'leads out of its folder'],
    ['a NUL in a name', oddZip([{ name: 'a\0.jpg' }]), 'leads out of its folder'],
    ['a link', oddZip([{ name: 'a.jpg', mode: 0o120777, bytes: Buffer.from('/etc/passwd') }]), 'is a link'],
    ['a password', oddZip([{ name: 'a.jpg', flags: 0x801 }]), 'locked with a password'],
    ['a bomb', oddZip([{ name: 'a.jpg', bytes: Buffer.alloc(30_000_000) }]), 'would unfold'],
    [
      'more than a disk',
      oddZip(
        Array.from({ length: 40 }, (_, at) => ({
          name: `${at}.jpg`,
          claims: 900_000,
          bytes: Buffer.alloc(10),
        })),
      ),
      'can’t be unpacked',
    ],
    [
      'files in one another',
      oddZip([
        { name: 'a.jpg', bytes: Buffer.from('abcdefgh') },
        { name: 'b.jpg', bytes: Buffer.from('abcdefgh'), lieAt: 0 },
      ]),
      'lie in one another',
    ],
    ['a name twice', oddZip([{ name: 'a.jpg' }, { name: 'a.jpg' }]), 'twice'],
    [
      'too many files',
      oddZip(Array.from({ length: 2200 }, (_, at) => ({ name: `${at}.jpg` }))),
      'more than 2000 files',
    ],
    ['no end', oddZip([{ name: 'a.jpg' }]).subarray(0, 60), 'can’t be read'],
  ])('%s', async (what, zip, words) => {
    // Lies about lengths only show when it is unpacked: the photos are then refused, one by one.
    if (what === 'more than a disk') {
      const surveyId = await desk.newSurvey();
      const { id } = await desk.look({ 's.csv': sheet, 'a.zip': zip }, 201, surveyId);
      const done = await desk.bring(id);
      expect(done.refusedPhotos).toHaveLength(40);
      expect(done.refusedPhotos[0]?.problem).toContain(words);
      return;
    }
    const answer = await desk.look({ 's.csv': sheet, 'a.zip': zip }, 422);
    expect(answer.type).toBe('/problems/files-refused');
    expect(answer.detail).toContain(words);
  });

  it('other kinds of files', async () => {
    const xlsx = await packed({ '[Content_Types].xml': '<Types/>', 'xl/workbook.xml': '<workbook/>' });
    const answer = await desk.look({ 's.csv': jpeg(0) }, 422);
    expect(answer.detail).toContain('image/jpeg by its content');
    expect((await desk.look({ 's.csv': '' }, 422)).detail).toContain('empty');
    expect((await desk.look({ 'a.zip': await packed({ 'a.jpg': jpeg(0) }) }, 422)).detail).toContain(
      'No sheet of findings came',
    );
    expect((await desk.look({ 'book.xlsx': xlsx }, 422)).detail).toMatch(/spreadsheet|No sheet of findings/);
    expect((await desk.look({ 'a.csv': sheet, 'b.csv': sheet }, 422)).detail).toContain('several sheets');
  });
});

describe('rows that can’t become findings', () => {
  const messy = `${head}Hose,gas,Before use,\nAnode,hulk,next lay-up,\n,gas,soon,\nRail,deck,note,\n`;
  it('are named by line and column; nothing comes in until they are put right or left out by choice', async () => {
    const surveyId = await desk.newSurvey();
    const looked = await desk.look({ 's.csv': messy }, 201, surveyId);
    expect(looked.counts).toMatchObject({ findings: 2, leftOut: 2 });
    const bad = looked.rows.filter((row: { problems: unknown[] }) => row.problems.length > 0);
    expect(bad.map((row: { line: number }) => row.line)).toEqual([3, 4]);
    expect(bad[0].problems).toEqual([
      { column: 'System', detail: expect.stringContaining('“hulk” is no system of the boat') },
    ]);
    expect(bad[1].problems.map((p: { column: string }) => p.column)).toEqual(['Urgency', 'Title']);
    const refused = await desk.surveyor.post(`/v1/imports/${looked.id}/start`).send({}).expect(422);
    expect(refused.body.errors[0].pointer).toBe('line 3, System');
    expect(await desk.findings(surveyId)).toEqual([]);

    const sheet = await desk.surveyor.get(`/v1/imports/${looked.id}/left-out`).expect(200);
    expect(sheet.headers['content-disposition']).toContain('left-out-of-s.csv');
    const rows = parse(sheet.text, { bom: true, columns: true }) as Record<string, string>[];
    expect(rows).toHaveLength(2);
    expect(rows[0]).toMatchObject({ Line: '3', Title: 'Anode', System: 'hulk' });
    expect(rows[0]?.['What is wrong']).toContain('“hulk”');

    const done = await desk.bring(looked.id, { leaveOutBadRows: true });
    expect(done).toMatchObject({ state: 'done', counts: { findings: 2, leftOut: 2 } });
    expect((await desk.findings(surveyId)).map((f: { title: string }) => f.title)).toEqual(['Hose', 'Rail']);
    // What was handed back comes in again once it was put right; its own two columns say nothing.
    const mended = sheet.text
      .replaceAll('hulk', 'hull')
      .replaceAll('soon', 'note')
      .replaceAll(',,gas', ',Valve,gas');
    const again = await desk.look({ 'left.csv': mended }, 201, surveyId);
    expect(again).toMatchObject({ counts: { findings: 2, leftOut: 0 }, otherColumns: [] });
    const after = await desk.surveyor.get(`/v1/imports/${looked.id}/left-out`).expect(200);
    expect(parse(after.text, { bom: true })).toHaveLength(3);
  });
});

describe('who may, and when', () => {
  it('is the firm’s surveyors, while the survey is open', async () => {
    const surveyId = await desk.newSurvey();
    const sheet = Buffer.from(`${head}Hose,gas,note,\n`);
    const office = server.as(desk.firm.office);
    const refused = await office
      .post(`/v1/surveys/${surveyId}/imports`)
      .attach('file', sheet, 's.csv')
      .expect(403);
    expect(refused.body.detail).toContain('Only the firm’s surveyors');
    const { id } = await desk.look({ 's.csv': sheet }, 201, surveyId);
    await office.get(`/v1/imports/${id}`).expect(404);
    await desk.surveyor.patch(`/v1/surveys/${surveyId}`).send({ state: 'cancelled' }).expect(200);
    await desk.surveyor.post(`/v1/imports/${id}/start`).send({}).expect(409);
    await desk.look({ 's.csv': sheet }, 409, surveyId);
    await desk.surveyor.delete(`/v1/imports/${id}`).expect(204);
    await desk.surveyor.get(`/v1/imports/${id}`).expect(404);
  });

  it('fails with a sentence when the survey was shut meanwhile, and can be begun again', async () => {
    const surveyId = await desk.newSurvey();
    const { id } = await desk.look({ 's.csv': `${head}Hose,gas,note,\n` }, 201, surveyId);
    await desk.surveyor.post(`/v1/imports/${id}/start`).send({}).expect(202);
    await desk.surveyor.delete(`/v1/imports/${id}`).expect(409);
    await desk.surveyor.patch(`/v1/surveys/${surveyId}`).send({ state: 'cancelled' }).expect(200);
    const job = { firmId: desk.firm.id, importId: id };
    await expect(importSurveyJob(desk.deps, job, { lastAttempt: false })).rejects.toThrow('cancelled');
    const failed = (await desk.surveyor.get(`/v1/imports/${id}`).expect(200)).body;
    expect(failed).toMatchObject({ state: 'failed', problem: expect.stringContaining('cancelled') });
    await desk.surveyor.patch(`/v1/surveys/${surveyId}`).send({ state: 'enquiry' }).expect(200);
    expect(await desk.bring(id)).toMatchObject({ state: 'done', counts: { findings: 1 } });
    const done = await desk.surveyor.post(`/v1/imports/${id}/start`).send({}).expect(409);
    expect(done.body.detail).toContain('brought in already');
  });

  it('takes photos of the survey by name, uploaded before or beside the sheet', async () => {
    const surveyId = await desk.newSurvey();
    const at = `/v1/surveys/${surveyId}`;
    const up = async (bytes: Buffer, name: string): Promise<string> =>
      (await desk.surveyor.post(`${at}/photos`).attach('file', bytes, name).expect(201)).body.items[0].id;
    const before = await up(jpeg(0), 'before.jpg');
    const sheet = `${head}Hose,gas,note,"before.jpg, deck/1.jpg"\nRail,deck,note,1.jpg\n`;
    const { id } = await desk.look({ 's.csv': sheet }, 201, surveyId);
    const put = (items: object[]) => desk.surveyor.put(`/v1/imports/${id}/photos`).send({ items });
    const named = await put([{ name: 'deck/1.jpg' }, { name: 'hull/1.jpg' }]).expect(200);
    expect(named.body.missingPhotos).toEqual([]);
    expect(named.body.rows.map((row: { photos: number }) => row.photos)).toEqual([2, 0]);
    expect(named.body.rows[1].remarks[0].detail).toContain('Write the folder too');
    const deck = await up(jpeg(1), '1.jpg');
    await put([{ name: 'deck/1.jpg', photoId: crypto.randomUUID() }]).expect(422);
    await put([{ name: 'a' }, { name: 'a' }]).expect(422);
    const told = { name: 'hull/1.jpg', problem: 'The file is cut short.' };
    await put([{ name: 'deck/1.jpg', photoId: deck }, told]).expect(200);
    const done = await desk.bring(id);
    expect(done.refusedPhotos).toEqual([told]);
    expect((await desk.findings(surveyId)).map((f: { photoIds: string[] }) => f.photoIds)).toEqual([
      [before, deck],
      [deck],
    ]);
  });
});
