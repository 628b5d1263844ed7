import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { openLogger } from '@garboard/platform/logger';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import type { Role } from '@garboard/trade/permissions';
import { type PartyRole, partyRoles } from '@garboard/trade/vocabulary';
import { derivePhotoJob } from '@garboard/worker/jobs/derive-photo';
import { PDFDocument } from 'pdf-lib';
import { answerAllCoverage } from '../support/coverage.ts';
import { issueReport } from '../support/issue-report.ts';
import type { TestServer } from '../support/server.ts';
import { bill, gasTest, ownEntry, quotation, rates, visit } from './bodies.ts';

/** Who asks, and what they are to the survey that is theirs. */
export interface Asker {
  name: string;
  role: Role;
  person: Signed;
  released: boolean;
  client: boolean;
  /** Of a yard: whether the finding was given to it. */
  assigned: boolean;
}

/** A survey with one of everything; `ids` are by the noun of the path, and for some by the route's own name. */
export interface Place {
  name: 'own' | 'withheld' | 'same firm' | 'other firm';
  firmId: string;
  decidedBy: 'insurer' | 'surveyor';
  held: boolean;
  /** Whether the parties that ask are party to it. */
  theirs: boolean;
  ids: Record<string, string>;
}

type Firm = { id: string; name: string } & Record<'principal' | 'surveyor' | 'office', Signed>;

async function pdf(text: string): Promise<Buffer> {
  const document = await PDFDocument.create();
  document.addPage().drawText(text);
  return Buffer.from(await document.save());
}

/** Every role a person can have to a survey, parties with and without a release, as who pays and not. */
export async function buildAskers(server: TestServer, firm: Firm): Promise<Asker[]> {
  const staff = (['principal', 'surveyor', 'office'] as const).map((role) => ({
    ...{ name: role, role, person: firm[role], released: true, client: false, assigned: false },
  }));
  const parts: Omit<Asker, 'person'>[] = partyRoles.flatMap<Omit<Asker, 'person'>>((role) =>
    role === 'yard'
      ? [
          { name: 'yard with the finding', role, released: true, client: false, assigned: true },
          { name: 'yard without the finding', role, released: true, client: false, assigned: false },
          { name: 'yard not released to', role, released: false, client: false, assigned: true },
        ]
      : [true, false].flatMap((client) =>
          [true, false].map((released) => ({
            ...{ role, released, client, assigned: false },
            name: `${role}${client ? ' who pays' : ''}${released ? '' : ', not released to'}`,
          })),
        ),
  );
  const people: Asker[] = [];
  for (const part of parts) people.push({ ...part, person: await buildPerson(server.db) });
  return [...staff, ...people];
}

/** A firm with a principal, a surveyor and an office. */
export const buildStaffedFirm = (server: TestServer): Promise<Firm> =>
  buildFirm(server.db, ['principal', 'surveyor', 'office']);

/** A survey of this firm with one of everything, issued, with these people as its parties. */
export async function buildPlace(
  server: TestServer,
  firm: Firm,
  props: Pick<Place, 'name' | 'decidedBy' | 'held'> & { askers: readonly Asker[] },
): Promise<Place> {
  const surveyor = server.as(firm.surveyor);
  const made = async (path: string, body: object): Promise<Record<string, string>> =>
    (await surveyor.post(path).send(body).expect(201)).body;
  const vessel = await made('/v1/vessels', { name: `Boat of ${props.name}` });
  const attendances = [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }];
  const open = {
    vesselId: vessel.id,
    purpose: 'insurance',
    clearanceDecidedBy: props.decidedBy,
    attendances,
  };
  const survey = await made('/v1/surveys', open);
  const at = `/v1/surveys/${survey.id}`;
  const jpeg = await buildJpeg(3);
  const shot = await surveyor.post(`${at}/photos`).attach('file', jpeg, 'a.jpg').expect(201);
  const photo: string = shot.body.items[0].id;
  const jobs = { db: server.db, store: server.store, log: openLogger('test', 'fatal') };
  await derivePhotoJob(jobs, { firmId: firm.id, photoId: photo }, { lastAttempt: true });
  const words = { system: 'gas', observed: 'Seen.', recommendation: 'Mend.', urgency: 'before-use' };
  const finding = await made(`${at}/findings`, { ...words, title: 'Hose', photoIds: [photo] });
  const gone = await made(`${at}/findings`, { ...words, title: 'Gone' });
  await surveyor.delete(`/v1/findings/${gone.id}`).expect(204);
  const worksheet = await made(`${at}/worksheets`, {
    ...{ kind: 'gas-leak-down', inputs: gasTest, findingId: finding.id },
  });
  const inventory = await made(`${at}/inventory`, { system: 'life-saving', name: 'Liferaft' });
  await answerAllCoverage(surveyor, survey.id ?? '');
  const parties = await inviteAll(server, firm, { at, finding: finding.id ?? '', ...props });

  await issueReport(server, firm.id, surveyor, survey.id ?? '');
  const reports = await surveyor.get(`${at}/reports`).expect(200);
  const report: string = reports.body.items[0].id;
  const sender = server.as(parties.sender);
  const sent = await sender
    .post(`/v1/findings/${finding.id}/clearances`)
    .field('statement', 'Done.')
    .field('workDoneBy', 'Yard')
    .field('workDoneOn', '2026-05-05')
    .attach('file', await pdf('Bill'), 'bill.pdf')
    .expect(201);
  const upload = newId();
  await made(`${at}/uploads`, { id: upload, name: 'b.jpg', bytes: 5000, sha256: 'b'.repeat(64) });
  const sheet = Buffer.from('Title,System,Urgency\nSecret,hull,note\n');
  const brought = await surveyor.post(`${at}/imports`).attach('file', sheet, 'findings.csv').expect(201);
  const said = await made(`/v1/findings/${finding.id}/comments`, {
    text: 'Said',
    visibleTo: [...partyRoles],
  });
  const link = await made(`/v1/reports/${report}/share-links`, { label: 'Bank', days: 3 });
  const key = `hull-secret-${(vessel.id ?? '').slice(-12)}`;
  await surveyor.put(`/v1/catalogue/${key}`).send(ownEntry).expect(200);
  const deal = await engage(server, firm, { at, parties });
  const review = await rowsByHand(server, { firm, surveyId: survey.id ?? '', photo, report });
  if (props.held) {
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.survey.updateMany({ where: { id: survey.id ?? '' }, data: { held: true } }),
    );
  }
  const ids: Record<string, string> = {
    ...{ surveys: survey.id ?? '', vessels: vessel.id ?? '', findings: finding.id ?? '', photos: photo },
    ...{ reports: report, clearances: sent.body.id, fileId: sent.body.files[0].id, uploads: upload },
    imports: brought.body.id,
    ...{ worksheets: worksheet.id ?? '', inventory: inventory.id ?? '', 'review-comments': review },
    ...{
      'finding-comments': said.id ?? '',
      'share-links': link.id ?? '',
      firms: firm.id,
      catalogue: key,
      'firm-exports': review,
    },
    ...deal,
    ...{ partyId: parties.spareId, 'putYardFindings.partyId': parties.yardId, restoreFinding: gone.id ?? '' },
  };
  const { name, decidedBy, held } = props;
  return { name, firmId: firm.id, decidedBy, held, theirs: props.askers.length > 0, ids };
}

/** A quotation that was sent, a visit and an invoice that is paid in part. */
async function engage(
  server: TestServer,
  firm: Firm,
  { at, parties }: { at: string; parties: { senderId: string } },
): Promise<Record<string, string>> {
  const [principal, office] = [server.as(firm.principal), server.as(firm.office)];
  await principal.put(`/v1/firms/${firm.id}/rates`).send(rates).expect(200);
  await principal
    .post(`/v1/firms/${firm.id}/terms`)
    .send({ text: `We look, we report: ${at}.` })
    .expect(201);
  const made = async (path: string, body: object) => (await office.post(path).send(body).expect(201)).body;
  const offer = await made(`${at}/quotations`, { ...quotation, partyId: parties.senderId });
  await office.post(`/v1/quotations/${offer.id}/sending`).expect(200);
  const planned = await made(`${at}/visits`, visit);
  const invoice = await made(`${at}/invoices`, bill);
  await office.post(`/v1/invoices/${invoice.id}/sending`).expect(200);
  const day = new Date().toISOString().slice(0, 10);
  const paid = await made(`/v1/invoices/${invoice.id}/payments`, { amount: 5, paidOn: day });
  return {
    ...{ quotations: offer.id, visits: planned.id, invoices: invoice.id, payer: parties.senderId },
    paymentId: paid.payments[0].id,
  };
}

/** Invites the askers, one who sends evidence and one of whom the routes about a party speak. */
async function inviteAll(
  server: TestServer,
  firm: Firm,
  { at, finding, askers }: { at: string; finding: string; askers: readonly Asker[] },
) {
  const office = server.as(firm.office);
  const invite = async (role: PartyRole, { name, email }: Signed, more: object) =>
    (
      await office
        .post(`${at}/parties`)
        .send({ role, name, email, ...more })
        .expect(201)
    ).body.id as string;
  for (const { role, person, released, client, assigned } of askers) {
    const given = assigned ? { findingIds: [finding] } : {};
    await invite(role as PartyRole, person, { released, client, ...given });
  }
  const sender = await buildPerson(server.db);
  const senderId = await invite('owner', sender, { released: true });
  const spareId = await invite('lender', await buildPerson(server.db), { released: false });
  return {
    sender,
    senderId,
    spareId,
    yardId: await invite('yard', await buildPerson(server.db), { released: false }),
  };
}

/** What no request makes so: a comment of a review that is asked for, a PDF whose bytes the store has, an archive. */
async function rowsByHand(
  server: TestServer,
  { firm, surveyId, photo, report }: { firm: Firm; surveyId: string; photo: string; report: string },
): Promise<string> {
  const id = newId();
  const who = { firmId: firm.id, surveyId };
  await inTransaction(server.db, [firm.id], async (tx) => {
    const { sha256 } = await tx.photo.findUniqueOrThrow({ where: { id: photo } });
    await tx.report.update({ where: { id: report }, data: { sha256 } });
    const asked = { id: newId(), askedById: firm.office.id, askedByName: 'Office', askedAt: new Date() };
    await tx.review.create({ data: { ...who, ...asked } });
    const said = { id, text: 'Secret', byId: firm.surveyor.id, byName: 'S', byRole: 'surveyor' };
    await tx.reviewComment.create({ data: { ...who, ...said, at: new Date() } });
    const archive = { id, firmId: firm.id, state: 'ready', sha256, bytes: 9 };
    await tx.firmExport.create({ data: { ...archive, askedBy: 'P', askedAt: new Date() } });
  });
  return id;
}
