import { type Route, routes } from '@garboard/contract/routes';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { gasTest, ownEntry } from './bodies.ts';
import { statusOf } from './requests.ts';

let server: TestServer;
let stranger: Signed;
let uninvited: Signed;
/** An id of the first firm for each route with parameters. */
let ids: Record<string, string>;
/** The first firm's id. */
let firmId: string;
beforeAll(async () => {
  server = await startServer();
  const firm = await buildFirm(server.db, ['principal', 'surveyor']);
  stranger = (await buildFirm(server.db, ['principal'])).principal;
  uninvited = await buildPerson(server.db);
  const surveyor = server.as(firm.surveyor);
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Hidden' }).expect(201);
  const survey = await surveyor
    .post('/v1/surveys')
    .send({ vesselId: vessel.body.id, purpose: 'condition' })
    .expect(201);
  const path = `/v1/surveys/${survey.body.id}`;
  const photo = await surveyor
    .post(`${path}/photos`)
    .attach('file', await buildJpeg(3), 'a.jpg')
    .expect(201);
  const finding = await surveyor
    .post(`${path}/findings`)
    .send({ system: 'hull', title: 'Secret', urgency: 'before-use', observed: 'x', recommendation: 'y' })
    .expect(201);
  const worksheet = await surveyor
    .post(`${path}/worksheets`)
    .send({ kind: 'gas-leak-down', inputs: gasTest, findingId: finding.body.id })
    .expect(201);
  const item = await surveyor
    .post(`${path}/inventory`)
    .send({ system: 'life-saving', name: 'Liferaft', expiresOn: '2026-01-01' })
    .expect(201);
  await surveyor.put(`${path}/coverage/hull`).send({ reached: 'examined' }).expect(200);
  await surveyor.put('/v1/catalogue/hull-secret-of-the-firm').send(ownEntry).expect(200);
  const upload = { id: newId(), name: 'b.jpg', bytes: 5000, sha256: 'b'.repeat(64) };
  await surveyor.post(`${path}/uploads`).send(upload).expect(201);
  await surveyor.patch(path).send({ state: 'drafting' }).expect(200);
  await surveyor.post(`${path}/review`).send({}).expect(201);
  const comment = await surveyor.post(`${path}/review/comments`).send({ text: 'Secret' }).expect(201);
  const sheet = Buffer.from('Title,System,Urgency\nSecret,hull,note\n');
  const brought = await surveyor.post(`${path}/imports`).attach('file', sheet, 'findings.csv').expect(201);
  firmId = firm.id;
  const surveyId: string = survey.body.id;
  const [report, clearance, archive] = [newId(), newId(), newId()];
  await inTransaction(server.db, [firmId], async (tx) => {
    await tx.report.create({
      data: { id: report, firmId, surveyId, kind: 'full', revision: 1, snapshot: {}, requestedBy: 'x' },
    });
    await tx.reportPhoto.create({ data: { firmId, reportId: report, photoId: photo.body.items[0].id } });
    await tx.firmExport.create({ data: { id: archive, firmId, askedBy: 'x', askedAt: new Date() } });
    await tx.clearance.create({
      data: {
        ...{ id: clearance, firmId, surveyId, findingId: finding.body.id, statement: 's', workDoneBy: 'w' },
        ...{ workDoneOn: new Date('2026-01-01'), sentByName: 'n', sentByRole: 'owner' },
      },
    });
  });
  ids = {
    surveys: surveyId,
    vessels: vessel.body.id,
    findings: finding.body.id,
    photos: photo.body.items[0].id,
    reports: report,
    clearances: clearance,
    worksheets: worksheet.body.id,
    catalogue: 'hull-secret-of-the-firm',
    inventory: item.body.id,
    uploads: upload.id,
    imports: brought.body.id,
    'review-comments': comment.body.id,
    firms: firmId,
    'firm-exports': archive,
  };
});
afterAll(() => server.close());

describe('another firm’s and an uninvited person’s requests', () => {
  // Kinds of worksheet are the same for everybody, and saving under a key is each firm's own, tested below; every
  // other parameter names something of a firm's.
  const withIds = (Object.entries(routes) as [string, Route][]).filter(
    ([name, route]) =>
      route.access === 'signed-in' &&
      route.params &&
      !('kind' in route.params.shape) &&
      name !== 'putCatalogueEntry',
  );
  it.each(withIds.map(([name]) => name))('%s answers 404, and 401 without signing in', async (name) => {
    const route = (routes as Record<string, Route>)[name];
    if (!route) throw new Error('no such route');
    for (const person of [stranger, uninvited]) {
      expect({ name, status: await statusOf(server, { name, route, person, ids }) }).toEqual({
        name,
        status: 404,
      });
    }
    expect(await statusOf(server, { name, route, person: null, ids })).toBe(401);
  });

  it('save entries of the catalogue for their own firm only, under whatever key', async () => {
    const path = `/v1/catalogue/${ids.catalogue}`;
    await server.as(null).put(path).send(ownEntry).expect(401);
    await server.as(uninvited).put(path).send(ownEntry).expect(404);
    await server.as(stranger).put(`${path}?firmId=${firmId}`).send(ownEntry).expect(403);
    await server
      .as(stranger)
      .put(path)
      .send({ ...ownEntry, title: 'Theirs' })
      .expect(200);
    const kept = await inTransaction(server.db, [firmId], (tx) =>
      tx.firmCatalogueEntry.findMany({ select: { firmId: true, title: true, current: true } }),
    );
    expect(kept).toEqual([{ firmId: firmId, title: 'Secret', current: true }]);
    const found = await server.as(stranger).get('/v1/catalogue?q=secret').expect(200);
    expect(found.body.items.filter((item: { origin: string }) => item.origin !== 'garboard')).toEqual([]);
    await server.as(uninvited).get('/v1/catalogue').expect(403);
  });

  it('show nothing in lists', async () => {
    for (const person of [stranger, uninvited]) {
      for (const path of ['/v1/vessels', '/v1/surveys', '/v1/recommendations', '/v1/expiries']) {
        expect((await server.as(person).get(path).expect(200)).body.items).toEqual([]);
      }
    }
  });

  it('find no rows in the database either, when no firm is set', async () => {
    const counts = await inTransaction(server.db, [], async (tx) => [
      await tx.survey.count(),
      await tx.finding.count(),
      await tx.photo.count(),
      await tx.photoUpload.count(),
      await tx.event.count(),
      await tx.report.count(),
      await tx.reportPhoto.count(),
      await tx.worksheet.count(),
      await tx.review.count(),
      await tx.reviewComment.count(),
      await tx.coverageAnswer.count(),
      await tx.inventoryItem.count(),
      await tx.signingKey.count(),
      await tx.firmCatalogueEntry.count(),
      await tx.firmCatalogueWord.count(),
    ]);
    expect(counts).toEqual(counts.map(() => 0));
    await expect(
      inTransaction(server.db, [newId()], (tx) =>
        tx.vessel.create({ data: { id: newId(), firmId: firmId, name: 'Smuggled' } }),
      ),
    ).rejects.toThrow(/row-level security/);
    await expect(
      inTransaction(server.db, [firmId], (tx) => tx.event.deleteMany({ where: { surveyId: ids.surveys } })),
    ).rejects.toThrow(/permission denied/);
    // A saved wording stays as it is, and ours can't be written at all.
    const data = { title: 'Rewritten' };
    await expect(
      inTransaction(server.db, [firmId], (tx) => tx.firmCatalogueEntry.updateMany({ data })),
    ).rejects.toThrow(/permission denied/);
    await expect(
      inTransaction(server.db, [firmId], (tx) => tx.catalogueEntry.updateMany({ data })),
    ).rejects.toThrow(/permission denied/);
  });
});
