import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import { systemsAsked } from '@garboard/trade/coverage';
import { expect, vi } from 'vitest';
import type { Caller, TestServer } from '../support/server.ts';

export const password = 'a long enough passphrase';
type Part = 'surveyor' | 'owner' | 'insurer' | 'second' | 'yard';

/** An issued survey on which the insurer decides, and everybody who has to do with it. */
export interface ClearanceWorld {
  people: Record<Part, Signed>;
  surveyor: Caller;
  surveyId: string;
  /** A gas line with two items, a seacock, an anode. */
  gas: string;
  seacock: string;
  anode: string;
}

/** Makes it, by the interface that the portal uses. */
export async function makeClearanceWorld(server: TestServer): Promise<ClearanceWorld> {
  const firm = await buildFirm(server.db, ['surveyor']);
  const people = {
    surveyor: firm.surveyor,
    owner: await buildPerson(server.db, { name: 'Orla Fennimore' }),
    insurer: await buildPerson(server.db, { name: 'Idris Calloway' }),
    second: await buildPerson(server.db, { name: 'Maren Tolliver' }),
    yard: await buildPerson(server.db, { name: 'Ropewalk Yard' }),
  };
  const passwordHash = await hashPassword(password);
  const ids = { in: Object.values(people).map((person) => person.id) };
  await inTransaction(server.db, [], (tx) =>
    tx.person.updateMany({ where: { id: ids }, data: { passwordHash } }),
  );
  const api = server.as(firm.surveyor);
  const make = async (path: string, body: object): Promise<string> =>
    (await api.post(path).send(body).expect(201)).body.id;

  const vesselId = await make('/v1/vessels', { name: 'Reedmace', lengthOverallM: 9.8 });
  const attendances = [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }];
  const about = { vesselId, purpose: 'insurance', attendances, scope: 'All.', limitations: 'None.' };
  const surveyId = await make('/v1/surveys', about);
  const path = `/v1/surveys/${surveyId}`;
  const photo = await api
    .post(`${path}/photos`)
    .attach('file', await buildJpeg(31, { width: 640, height: 480 }), 'hose.jpg')
    .expect(201);
  const photoId: string = photo.body.items[0].id;
  await api.patch(`/v1/photos/${photoId}`).send({ caption: 'Hose at the regulator' }).expect(200);
  const prepared = async () => (await api.get(`/v1/photos/${photoId}`).expect(200)).body;
  await vi.waitFor(async () => expect(await prepared()).toMatchObject({ state: 'ready' }), 60_000);

  const words = { observed: 'Seen.', consequence: 'It may fail.' };
  const gas = await make(`${path}/findings`, {
    ...{ ...words, system: 'gas', title: 'Gas line loses pressure', urgency: 'before-use' },
    ...{ recommendation: 'Renew hose and regulator.', photoIds: [photoId] },
    items: [{ text: 'Renew the hose' }, { text: 'Renew the regulator' }],
  });
  const soon = { ...words, urgency: 'within-days', withinDays: 30 };
  const seacock = await make(`${path}/findings`, {
    ...{ ...soon, system: 'through-hulls', title: 'Seacock seized', recommendation: 'Renew the seacock.' },
  });
  const anode = await make(`${path}/findings`, {
    ...{ ...soon, system: 'corrosion-protection', title: 'Anode half wasted', recommendation: 'Renew it.' },
  });
  await make(`${path}/worksheets`, {
    ...{ kind: 'gas-leak-down', findingId: gas },
    inputs: { startPressure: 250, endPressure: 220, holdTime: 5, gaugeResolution: 1, noLiquid: true },
  });
  for (const system of systemsAsked('insurance')) {
    await api.put(`${path}/coverage/${system}`).send({ reached: 'examined' }).expect(200);
  }
  for (const [role, person] of [
    ['owner', people.owner],
    ['insurer', people.insurer],
    ['insurer', people.second],
    ['yard', people.yard],
  ] as const) {
    const { name, email } = person;
    await api.post(`${path}/parties`).send({ role, name, email, released: true }).expect(201);
  }
  await api.patch(path).send({ state: 'drafting' });
  const report = await api.post(`${path}/reports`).send({ kind: 'full' }).expect(202);
  const now = async () => (await api.get(`/v1/reports/${report.body.id}`).expect(200)).body;
  await vi.waitFor(async () => expect(await now()).toMatchObject({ state: 'issued' }), {
    ...{ timeout: 60_000, interval: 300 },
  });
  return { people, surveyor: api, surveyId, gas, seacock, anode };
}
