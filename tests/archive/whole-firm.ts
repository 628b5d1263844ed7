import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildJpeg } from '@garboard/seed/builders';
import { buildAskers, buildPlace, buildStaffedFirm, type Place } from '../isolation/world.ts';
import type { TestServer } from '../support/server.ts';
import { startTestWorker } from '../support/worker.ts';

export type WholeFirm = Awaited<ReturnType<typeof buildStaffedFirm>> & { place: Place; report: string };

/** Asks until the answer fits; fails with the last one. */
export async function until<T>(ask: () => Promise<T>, fits: (answer: T) => boolean): Promise<T> {
  const end = Date.now() + 120_000;
  for (;;) {
    const answer = await ask();
    if (fits(answer)) return answer;
    if (Date.now() > end) throw new Error(`Still not so after two minutes: ${JSON.stringify(answer)}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

const inDays = (days: number) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

/** A firm with rows in every table and files of every kind: issued and printed documents, evidence, the whole record. */
export async function buildWholeFirm(server: TestServer): Promise<WholeFirm> {
  const firm = await buildStaffedFirm(server);
  const askers = await buildAskers(server, firm);
  const parties = askers.filter(({ role }) => !['principal', 'surveyor', 'office'].includes(role));
  const place = await buildPlace(server, firm, {
    ...{ name: 'own', decidedBy: 'surveyor', held: false, askers: parties },
  });
  const { ids } = place;
  const surveyor = server.as(firm.surveyor);
  const at = `/v1/surveys/${ids.surveys}`;
  await surveyor
    .post(`/v1/clearances/${ids.clearances}/decision`)
    .send({ decision: 'return', reason: 'No photo of it.' })
    .expect(200);
  await surveyor
    .post(`/v1/findings/${ids.findings}/extensions`)
    .send({ dueOn: inDays(60), reason: 'The yard is full.' })
    .expect(201);
  await surveyor
    .post(`${at}/re-inspections`)
    .send({
      ...{ date: inDays(0), place: 'Hard 3', condition: 'ashore', note: 'Looked again' },
      items: [
        { findingId: ids.findings, outcome: 'not-put-right', note: 'Still loose.', photoIds: [ids.photos] },
      ],
    })
    .expect(201);
  const later = await surveyor
    .post(`${at}/photos`)
    .attach('file', await buildJpeg(9), 'later.jpg')
    .expect(201);
  const laterId: string = later.body.items[0].id;
  const marks = [{ shape: 'arrow', from: { x: 0.2, y: 0.2 }, to: { x: 0.6, y: 0.6 } }];
  const caption = 'Côte d’à-côté „später“ \\ "quoted"\n2';
  await surveyor.patch(`/v1/photos/${laterId}`).send({ caption, marks }).expect(200);
  await inTransaction(server.db, [firm.id], async (tx) => {
    const who = { firmId: firm.id, surveyId: ids.surveys ?? '' };
    const day = new Date('2026-06-01');
    await tx.photo.update({ where: { id: laterId }, data: { beforePhotoId: ids.photos } });
    await tx.dueReminder.create({
      data: { firmId: firm.id, findingId: ids.findings ?? '', dueOn: day, days: 3 },
    });
    const asked = { partyId: ids.payer ?? '', personId: firm.office.id, name: 'Ines', role: 'owner' };
    await tx.visitAsk.create({ data: { ...who, ...asked, id: newId(), visitId: ids.visits ?? '' } });
    await tx.overdueRound.create({ data: { ...who, week: day } });
    await tx.importedRow.create({
      data: { ...who, fingerprint: 'f'.repeat(64), findingId: ids.findings ?? '' },
    });
    // Whose record began in yet another installation, under another id there.
    await tx.formerId.create({ data: { firmId: firm.id, formerId: newId(), personId: firm.office.id } });
  });
  const worker = await startTestWorker(server);
  try {
    const asked = await surveyor.post(`${at}/reports`).send({ kind: 'full' }).expect(202);
    const report: string = asked.body.id;
    await until(
      async () => (await surveyor.get(`/v1/reports/${report}`).expect(200)).body.state as string,
      (state) => state === 'issued',
    );
    // All that was asked of the worker is done: notices are written, pictures are made.
    await until(
      async () => {
        const photos = (await surveyor.get(`${at}/photos`).expect(200)).body.items as { state: string }[];
        const [left] = await inTransaction(
          server.db,
          [firm.id],
          (tx) =>
            tx.$queryRaw<{ waiting: number; notices: number }[]>`
            SELECT (SELECT count(*)::int FROM outbox WHERE dispatched_at IS NULL) AS waiting,
              (SELECT count(*)::int FROM notices) AS notices`,
        );
        return { left, unmade: photos.filter(({ state }) => state === 'processing').length };
      },
      ({ left, unmade }) => left?.waiting === 0 && left.notices > 10 && unmade === 0,
    );
    return { ...firm, place, report };
  } finally {
    await worker.close();
  }
}
