import { hashPassword } from '@garboard/core/people/passwords';
import { hashToken, newToken } from '@garboard/core/people/tokens';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import { firstAccountLink } from '@garboard/seed/first-account';
import { systemsAsked } from '@garboard/trade/coverage';
import { expect, vi } from 'vitest';
import type { Caller, TestServer } from '../support/server.ts';
import { type Engaged, makeEngaged } from './axe-engagement.ts';

export const password = 'a long enough passphrase';

/** Who visits pages: nobody is signed in, or one of these. */
export type Role = 'nobody' | 'surveyor' | 'principal' | 'office' | 'owner' | 'insurer';

/** What the pages are visited with: one survey at work, one issued, one with nothing in it. */
export interface World {
  people: Record<Exclude<Role, 'nobody'>, Signed>;
  /** A survey being drafted, with something in each of its sections. */
  drafting: { id: string; photos: string[]; findings: string[]; worksheet: string; equipment: string };
  /** Issued and shared with owner and insurer. */
  issued: { id: string; findings: string[]; worksheet: string; report: string; code: string };
  /** A survey with its quotations, visits and invoices; the owner pays. */
  engaged: Engaged;
  empty: string;
  /** Waits for a second surveyor to approve it; there is a remark on a finding. */
  reviewing: string;
  vessel: string;
  /** One-time tokens: of somebody invited, of the first account, of somebody who comes back, and of who needs a code. */
  welcome: { invited: string; first: string; back: string; coded: string };
  /** Signs in with a code too; the tokens of a link to the issued report, and of one with a passcode. */
  coded: Signed;
  shared: { open: string; passcode: string };
}

const leakDown = {
  kind: 'gas-leak-down',
  inputs: { startPressure: 250, endPressure: 220, holdTime: 5, gaugeResolution: 1, noLiquid: true },
};
const marks = [
  { shape: 'arrow', from: { x: 0.1, y: 0.1 }, to: { x: 0.4, y: 0.4 }, tone: 'signal' },
  { shape: 'label', at: { x: 0.5, y: 0.2 }, text: 'Crack', tone: 'ink' },
  { shape: 'blur', from: { x: 0.7, y: 0.7 }, to: { x: 0.9, y: 0.9 } },
];
const attendances = [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }];

/** Makes it, by the interface that the portal uses. The worker prepares photos and issues the report meanwhile. */
export async function makeWorld(server: TestServer): Promise<World> {
  const firm = await buildFirm(server.db, ['surveyor', 'principal', 'office']);
  const owner = await buildPerson(server.db, { name: 'Orla Fennimore' });
  const insurer = await buildPerson(server.db, { name: 'Idris Calloway' });
  const invited = await buildPerson(server.db, { name: 'Wren Attwater' });
  const { surveyor, principal, office } = firm;
  const people = { surveyor, principal, office, owner, insurer };
  const passwordHash = await hashPassword(password);
  const id = { in: Object.values(people).map((person) => person.id) };
  await inTransaction(server.db, [], (tx) => tx.person.updateMany({ where: { id }, data: { passwordHash } }));
  const api = server.as(surveyor);
  const make = async (path: string, body: object): Promise<string> =>
    (await api.post(path).send(body).expect(201)).body.id;

  const vessel = await make('/v1/vessels', { name: 'Tansy Rook', hullMaterial: 'grp', lengthOverallM: 9.8 });
  const about = { vesselId: vessel, attendances, scope: 'Hull and rig.', limitations: 'Afloat in part.' };
  const issuedId = await make('/v1/surveys', { ...about, purpose: 'insurance' });
  const issued = await fillIssued(server, api, issuedId, { owner, insurer });
  const draftingId = await make('/v1/surveys', { ...about, purpose: 'pre-purchase', printCosts: true });
  const drafting = await fillDrafting(api, draftingId, issuedId);
  const engaged = await makeEngaged(
    { id: firm.id, principal: server.as(principal), surveyor: api },
    { person: owner, as: server.as(owner) },
    vessel,
  );
  const empty = await make('/v1/surveys', { vesselId: vessel, purpose: 'condition' });
  const reviewing = await make('/v1/surveys', { ...about, purpose: 'damage' });
  const mount = { system: 'engine', title: 'Mount cracked', urgency: 'note', observed: 'Seen.' };
  const findingId = await make(`/v1/surveys/${reviewing}/findings`, mount);
  await make(`/v1/surveys/${reviewing}/review`, { reviewerId: principal.id });
  await server
    .as(principal)
    .post(`/v1/surveys/${reviewing}/review/comments`)
    .send({ findingId, text: 'Is the date right?' })
    .expect(201);
  const coded = await buildPerson(server.db, { name: 'Fenwick Harrowgate' });
  await server.db.prisma.person.update({ where: { id: coded.id }, data: { passwordHash } });
  await server.db.prisma.secondFactor.create({
    data: { personId: coded.id, sealed: new Uint8Array(48), confirmedAt: new Date() },
  });
  const linkTo = async ({ email }: Signed, kind: 'invitation' | 'sign-in') => {
    const token = newToken();
    const expiresAt = new Date(Date.now() + 3_600_000);
    const link = { id: newId(), kind, email, tokenHash: hashToken(token), expiresAt };
    await server.db.prisma.oneTimeLink.create({ data: link });
    return token;
  };
  const share = async (fields: object): Promise<string> => {
    const body = { label: 'The yard', days: 7, ...fields };
    const made = await api.post(`/v1/reports/${issued.report}/share-links`).send(body).expect(201);
    return made.body.url.split('#token=')[1];
  };
  const shared = { open: await share({}), passcode: await share({ passcode: 'heron-17', viewLimit: 5 }) };
  await server
    .as(surveyor)
    .post('/v1/api-keys')
    .send({ name: 'Berth register', firmId: firm.id, role: 'surveyor', access: 'read' })
    .expect(201);
  const first = (await firstAccountLink(server.db, server.url)).split('token=')[1] ?? '';
  const welcome = {
    invited: await linkTo(invited, 'invitation'),
    first,
    back: await linkTo(invited, 'sign-in'),
    coded: await linkTo(coded, 'sign-in'),
  };
  return { people, drafting, issued, engaged, empty, reviewing, vessel, welcome, coded, shared };
}

async function sendPhotos(api: Caller, surveyId: string, from: number, count: number): Promise<string[]> {
  const sending = api.post(`/v1/surveys/${surveyId}/photos`);
  for (let n = from; n < from + count; n += 1) {
    const takenAt = `2026:05:04 10:${String(n).padStart(2, '0')}:00`;
    sending.attach('file', await buildJpeg(n * 31, { width: 640, height: 480, takenAt }), `p${n}.jpg`);
  }
  await sending.expect(201);
  const all = async () =>
    (await api.get(`/v1/surveys/${surveyId}/photos`).expect(200)).body.items as {
      id: string;
      state: string;
    }[];
  const prepared = async () => expect((await all()).every((photo) => photo.state === 'ready')).toBe(true);
  await vi.waitFor(prepared, { timeout: 60_000, interval: 300 });
  return (await all()).map((photo) => photo.id);
}

async function fillIssued(
  server: TestServer,
  api: Caller,
  id: string,
  { owner, insurer }: Record<'owner' | 'insurer', Signed>,
): Promise<World['issued']> {
  const path = `/v1/surveys/${id}`;
  const photoIds = await sendPhotos(api, id, 1, 2);
  await api.patch(`/v1/photos/${photoIds[0]}`).send({ caption: 'Seacock, lever at its stop' }).expect(200);
  const finding = { observed: 'Seen.', consequence: 'It may fail.', recommendation: 'Renew.' };
  const findings: string[] = [];
  for (const one of [
    {
      system: 'gas',
      title: 'Gas line loses pressure',
      urgency: 'before-use',
      photoIds,
      harms: ['poisoning'],
      items: [{ text: 'Renew the hose' }, { text: 'Renew the regulator' }],
    },
    { system: 'through-hulls', title: 'Seacock seized', urgency: 'within-days', withinDays: 30 },
    { system: 'ground-tackle', title: 'Warp chafed', urgency: 'note', references: ['ISO 15084'] },
  ]) {
    findings.push(
      (
        await api
          .post(`${path}/findings`)
          .send({ ...finding, ...one })
          .expect(201)
      ).body.id,
    );
  }
  const measured = await api
    .post(`${path}/worksheets`)
    .send({ ...leakDown, findingId: findings[0] })
    .expect(201);
  for (const system of systemsAsked('insurance')) {
    await api.put(`${path}/coverage/${system}`).send({ reached: 'examined' }).expect(200);
  }
  for (const [role, { name, email }] of Object.entries({ owner, insurer })) {
    await api.post(`${path}/parties`).send({ role, name, email, released: true }).expect(201);
  }
  await api.patch(path).send({ state: 'drafting' });
  const report = await api.post(`${path}/reports`).send({ kind: 'full' }).expect(202);
  const now = async () => (await api.get(`/v1/reports/${report.body.id}`).expect(200)).body;
  await vi.waitFor(async () => expect(await now()).toMatchObject({ state: 'issued' }), {
    ...{ timeout: 60_000, interval: 300 },
  });
  // Evidence for the first waits for its decision; the second awaits evidence.
  await server
    .as(owner)
    .post(`/v1/findings/${findings[0]}/clearances`)
    .field('statement', 'Hose renewed.')
    .field('workDoneBy', 'Ropewalk Yard')
    .field('workDoneOn', '2026-05-20')
    .field('pairs', JSON.stringify([{ file: 0, beforePhotoId: photoIds[0] }]))
    .attach('file', await buildJpeg(77, { width: 640, height: 480 }), 'after.jpg')
    .expect(201);
  await api
    .post(`/v1/findings/${findings[1]}/comments`)
    .send({ text: 'Is the seacock bronze?', visibleTo: ['owner'] })
    .expect(201);
  const { id: reportId, verificationCode: code } = await now();
  return { id, findings, worksheet: measured.body.id, report: reportId, code };
}

async function fillDrafting(api: Caller, id: string, earlier: string): Promise<World['drafting']> {
  const path = `/v1/surveys/${id}`;
  const photos = await sendPhotos(api, id, 10, 6);
  const before = (await api.get(`/v1/surveys/${earlier}/photos`).expect(200)).body.items[0].id;
  await api.patch(`/v1/photos/${photos[0]}`).send({ caption: 'Anode, port leg', marks }).expect(200);
  await api.patch(`/v1/photos/${photos[1]}`).send({ beforePhotoId: before }).expect(200);
  const cost = { low: 120_000, high: 180_000, currency: 'EUR', basis: 'opinion' };
  const findings: string[] = [];
  for (const one of [
    {
      ...{ system: 'dc-electrical', title: 'Spring clamps on a charger', catalogueKey: 'dc-spring-clamps' },
      ...{ urgency: 'within-days', withinDays: 30, harms: ['fire-explosion'], cost },
      ...{ grading: { severity: 2, probability: 'C' }, photoIds: photos.slice(0, 3) },
    },
    { system: 'deck', title: 'סדק בסיפון', urgency: 'next-layup' },
    { system: 'hull', title: 'To be deleted', urgency: 'note' },
  ]) {
    const body = { observed: 'Seen at {location}.', recommendation: 'Mend.', ...one };
    findings.push((await api.post(`${path}/findings`).send(body).expect(201)).body.id);
  }
  await api.delete(`/v1/findings/${findings.pop()}`).expect(204);
  // Enough for lists that are longer than a window.
  for (let n = 1; n <= 20; n += 1) {
    const more = { system: 'hull', title: `Blister ${n}`, urgency: 'note', observed: 'Seen.' };
    await api.post(`${path}/findings`).send(more).expect(201);
  }
  const measured = await api
    .post(`${path}/worksheets`)
    .send({ ...leakDown, findingId: findings[0] })
    .expect(201);
  await api.put(`${path}/coverage/hull`).send({ reached: 'examined', lookedFrom: 'the hard' }).expect(200);
  await api.put(`${path}/coverage/deck`).send({ reached: 'partly', reason: 'Under a tent.' }).expect(200);
  const raft = { system: 'life-saving', name: 'Liferaft', madeOn: '2020-03-01', expiresOn: '2024-03-31' };
  const item = await api.post(`${path}/inventory`).send(raft).expect(201);
  await api
    .post(`${path}/parties`)
    .send({ role: 'buyer', name: 'Sorrel Quayle', email: 'sorrel@quayle.example' })
    .expect(201);
  return { id, photos, findings, worksheet: measured.body.id, equipment: item.body.id };
}
