import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import { answerAllCoverage } from '../support/coverage.ts';
import { issueReport } from '../support/issue-report.ts';
import type { TestServer } from '../support/server.ts';
import { gasTest, quotation, rates, visit } from './bodies.ts';

/** By what a body may name: the id of the survey in question, or of another's. */
export type Named = Record<NamedNoun, string>;
export type NamedNoun =
  | 'firm'
  | 'vessel'
  | 'survey'
  | 'surveyor'
  | 'photo'
  | 'laterPhoto'
  | 'finding'
  | 'item'
  /** Of a finding without evidence that waits. */
  | 'openFinding'
  | 'openItem'
  | 'worksheet'
  | 'yard'
  | 'client'
  | 'upload'
  | 'comment'
  | 'inventoryItem'
  | 'findingComment'
  | 'reInspection'
  | 'clearance'
  | 'quotation'
  | 'notice'
  | 'visit'
  | 'import';

/** Two surveys with one of everything that a body may name: one being written, one issued. */
export interface NamedPlace {
  draft: Named;
  issued: Named;
}

export interface NamedFirm {
  id: string;
  principal: Signed;
  surveyor: Signed;
  office: Signed;
  owner: Signed;
  insurer: Signed;
  yard: Signed;
}

/** A firm with its staff, and the people who are party to its surveys. */
export async function buildNamedFirm(server: TestServer): Promise<NamedFirm> {
  const firm = await buildFirm(server.db, ['principal', 'surveyor', 'office']);
  await server.as(firm.principal).put(`/v1/firms/${firm.id}/rates`).send(rates).expect(200);
  const text = 'We look, we report.';
  await server.as(firm.principal).post(`/v1/firms/${firm.id}/terms`).send({ text }).expect(201);
  const [owner, insurer] = [await buildPerson(server.db), await buildPerson(server.db)];
  return { ...firm, owner, insurer, yard: await buildPerson(server.db) };
}

/** Ids of nobody's, for what a place has none of. */
const nobodys = { clearance: newId(), findingComment: newId(), reInspection: newId(), notice: newId() };

async function buildSurvey(server: TestServer, firm: NamedFirm, seed: number): Promise<Named> {
  const surveyor = server.as(firm.surveyor);
  const office = server.as(firm.office);
  const made = async (path: string, body: object) => (await surveyor.post(path).send(body).expect(201)).body;
  const vessel = await made('/v1/vessels', { name: `Boat ${seed}` });
  const attendances = [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }];
  const open = { vesselId: vessel.id, purpose: 'insurance', clearanceDecidedBy: 'surveyor', attendances };
  const survey = await made('/v1/surveys', open);
  const at = `/v1/surveys/${survey.id}`;
  const photo = async (n: number) => {
    const jpeg = await buildJpeg(n, { width: 80, height: 60 });
    const shot = await surveyor.post(`${at}/photos`).attach('file', jpeg, `${n}.jpg`).expect(201);
    return shot.body.items[0].id as string;
  };
  const [shown, later] = [await photo(seed), await photo(seed + 1)];
  const finding = await made(`${at}/findings`, {
    ...{ system: 'gas', title: 'Hose', urgency: 'before-use', observed: 'Seen.', recommendation: 'Mend.' },
    ...{ photoIds: [shown], items: [{ text: 'The port hose' }, { text: 'The other hose' }] },
  });
  const unproved = await made(`${at}/findings`, {
    ...{ system: 'gas', title: 'Valve', urgency: 'before-use', observed: 'Seen.', recommendation: 'Mend.' },
    ...{ photoIds: [shown], items: [{ text: 'The valve' }, { text: 'Its label' }] },
  });
  const worksheet = await made(`${at}/worksheets`, { kind: 'gas-leak-down', inputs: gasTest });
  const invite = async (role: string, person: Signed, more: object) =>
    (
      await office
        .post(`${at}/parties`)
        .send({ role, name: person.name, email: person.email, ...more })
        .expect(201)
    ).body.id as string;
  const client = await invite('owner', firm.owner, { released: true, client: true });
  await invite('insurer', firm.insurer, { released: true });
  const yard = await invite('yard', firm.yard, { released: true, findingIds: [finding.id, unproved.id] });
  const upload = { id: newId(), name: 'b.jpg', bytes: 5000, sha256: `${seed}`.padStart(64, 'b') };
  await made(`${at}/uploads`, upload);
  const inventory = await made(`${at}/inventory`, { system: 'life-saving', name: 'Liferaft' });
  await answerAllCoverage(surveyor, survey.id);
  const offer = (
    await office
      .post(`${at}/quotations`)
      .send({ ...quotation, partyId: client })
      .expect(201)
  ).body;
  const planned = (await office.post(`${at}/visits`).send(visit).expect(201)).body;
  const sample = await surveyor.get('/v1/findings-sample').expect(200);
  const sheet = await surveyor
    .post(`${at}/imports`)
    .attach('file', Buffer.from(sample.text), 'findings.csv')
    .expect(201);
  return {
    ...nobodys,
    ...{ firm: firm.id, vessel: vessel.id, survey: survey.id, surveyor: firm.surveyor.id },
    ...{ photo: shown, laterPhoto: later, finding: finding.id, item: finding.items[0].id },
    ...{ openFinding: unproved.id, openItem: unproved.items[0].id },
    ...{ worksheet: worksheet.id, yard, client, upload: upload.id, inventoryItem: inventory.id },
    ...{ quotation: offer.id, comment: newId(), visit: planned.id, import: sheet.body.id },
  };
}

/** Something that a person who asks for nothing is told of. */
async function tell(server: TestServer, firmId: string): Promise<string> {
  const [id, reader] = [newId(), await buildPerson(server.db)];
  const what = { kind: 'report.issued', topic: 'reports', facts: {}, at: new Date() };
  await inTransaction(server.db, [firmId], (tx) =>
    tx.notice.create({ data: { id, firmId, personId: reader.id, eventId: newId(), ...what } }),
  );
  return id;
}

/** Both surveys of a firm. */
export async function buildNamedPlace(
  server: TestServer,
  firm: NamedFirm,
  seed: number,
): Promise<NamedPlace> {
  const surveyor = server.as(firm.surveyor);
  const draft = await buildSurvey(server, firm, seed);
  const at = `/v1/surveys/${draft.survey}`;
  await surveyor.patch(at).send({ state: 'drafting' }).expect(200);
  await surveyor.post(`${at}/review`).send({}).expect(201);
  draft.comment = (await surveyor.post(`${at}/review/comments`).send({ text: 'Why?' }).expect(201)).body.id;

  const issued = await buildSurvey(server, firm, seed + 10);
  const quoted = `/v1/quotations/${issued.quotation}`;
  await server.as(firm.office).post(`${quoted}/sending`).expect(200);
  const sent = (await server.as(firm.owner).get(quoted).expect(200)).body;
  const { textSha256 } = sent;
  await server.as(firm.owner).post(`${quoted}/acceptance`).send({ typedName: 'O', textSha256 }).expect(200);
  await issueReport(server, firm.id, surveyor, issued.survey);
  const evidence = await server
    .as(firm.owner)
    .post(`/v1/findings/${issued.finding}/clearances`)
    .field('statement', 'Done.')
    .field('workDoneBy', 'Yard')
    .field('workDoneOn', '2026-05-05')
    .field('itemIds', JSON.stringify([issued.item]))
    .attach('file', await buildJpeg(seed + 5, { width: 80, height: 60 }), 'e.jpg')
    .expect(201);
  issued.clearance = evidence.body.id;
  const findingAt = `/v1/findings/${issued.finding}/comments`;
  issued.findingComment = (await surveyor.post(findingAt).send({ text: 'Said' }).expect(201)).body.id;
  const today = new Date().toISOString().slice(0, 10);
  const seen = { findingId: issued.openFinding, outcome: 'not-put-right', note: 'Not yet.' };
  const again = await surveyor
    .post(`/v1/surveys/${issued.survey}/re-inspections`)
    .send({ date: today, place: 'Hard 3', condition: 'ashore', items: [seen] })
    .expect(201);
  issued.reInspection = again.body.id;
  issued.notice = await tell(server, firm.id);
  return { draft, issued };
}
