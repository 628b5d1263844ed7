import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import type { Caller, TestServer } from '../support/server.ts';

export const rates = {
  ...{ currency: 'EUR', perLength: 2_450, lengthUnit: 'm', perHour: 9_500, perDistance: 42 },
  ...{ distanceUnit: 'km', minimum: 45_000, taxName: 'VAT', taxRate: 20_000 },
  ...{ quotationDays: 30, paymentDays: 14, releaseRule: 'at-once', paymentWords: 'By bank transfer.' },
};
export const fee = { text: 'Survey, afloat', quantity: 11_280, unit: 'm', price: 2_450, taxRate: 20_000 };

export interface Setting {
  firm: { id: string } & Record<'principal' | 'surveyor' | 'office', Signed>;
  principal: Caller;
  surveyor: Caller;
  office: Caller;
  /** A day from now. */
  day: (days: number) => string;
}

/** A firm that has its rates and terms. */
export async function setting(server: TestServer, releaseRule = 'at-once'): Promise<Setting> {
  const firm = await buildFirm(server.db, ['principal', 'surveyor', 'office']);
  const principal = server.as(firm.principal);
  await principal
    .put(`/v1/firms/${firm.id}/rates`)
    .send({ ...rates, releaseRule })
    .expect(200);
  await principal.post(`/v1/firms/${firm.id}/terms`).send({ text: 'We look, we report.' }).expect(201);
  return {
    firm,
    principal,
    surveyor: server.as(firm.surveyor),
    office: server.as(firm.office),
    day: (days) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10),
  };
}

/** A survey with parties in these roles, each signed in. */
export async function surveyWith<const R extends string>(
  server: TestServer,
  { firm, surveyor }: Setting,
  roles: readonly R[],
): Promise<{ id: string; path: string } & Record<R, { person: Signed; partyId: string; as: Caller }>> {
  const vessel = await surveyor
    .post('/v1/vessels')
    .send({ name: 'Tansy Rook', lengthOverallM: 11.28 })
    .expect(201);
  const survey = await surveyor
    .post('/v1/surveys')
    .send({ vesselId: vessel.body.id, purpose: 'pre-purchase', timeZone: 'Europe/Lisbon' })
    .expect(201);
  const id: string = survey.body.id;
  const parties: Record<string, unknown> = {};
  for (const role of roles) {
    const person = await buildPerson(server.db);
    const partyId = newId();
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.party.create({
        data: {
          ...{ id: partyId, firmId: firm.id, surveyId: id, personId: person.id },
          ...{ role, name: person.name, released: true },
        },
      }),
    );
    parties[role] = { person, partyId, as: server.as(person) };
  }
  return { id, path: `/v1/surveys/${id}`, ...parties } as Awaited<ReturnType<typeof surveyWith<R>>>;
}
