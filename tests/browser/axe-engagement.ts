import type { Signed } from '@garboard/seed/builders';
import type { Caller } from '../support/server.ts';
import type { Visit } from './axe-visits.ts';

/** A survey with a quotation accepted and one waiting, one draft, visits to come and made, invoices of each kind. */
export interface Engaged {
  id: string;
  waiting: string;
  accepted: string;
  draft: string;
  sentInvoice: string;
  draftInvoice: string;
}

const line = { text: 'Survey, by length overall', quantity: 9_800, unit: 'm', price: 2_450, taxRate: 20_000 };
const inDays = (days: number, hour: number) =>
  `${new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10)}T${hour}:00:00Z`;

/** Makes it, by the interface that the portal uses. */
export async function makeEngaged(
  firm: { id: string; principal: Caller; surveyor: Caller },
  owner: { person: Signed; as: Caller },
  vesselId: string,
): Promise<Engaged> {
  const { principal, surveyor } = firm;
  const rates = {
    ...{ currency: 'EUR', perLength: 2_450, lengthUnit: 'm', perHour: 9_500, perDistance: 42 },
    ...{ distanceUnit: 'km', minimum: 45_000, taxName: 'VAT', taxRate: 20_000, releaseRule: 'at-once' },
    ...{ quotationDays: 30, paymentDays: 14, paymentWords: 'By bank transfer, quoting the number.' },
  };
  await principal.put(`/v1/firms/${firm.id}/rates`).send(rates).expect(200);
  const terms = 'We look at what can be reached.\n\nWe open nothing that has to be taken apart.';
  await principal.post(`/v1/firms/${firm.id}/terms`).send({ text: terms }).expect(201);
  const make = async (path: string, body: object): Promise<{ id: string; textSha256: string }> =>
    (await surveyor.post(path).send(body).expect(201)).body;

  const survey = await make('/v1/surveys', { vesselId, purpose: 'pre-purchase', timeZone: 'Europe/Lisbon' });
  const path = `/v1/surveys/${survey.id}`;
  const { name, email } = owner.person;
  const { id: partyId } = await make(`${path}/parties`, { role: 'owner', name, email, client: true });
  const offer = { partyId, lines: [line], scope: 'Hull, rig and gas.', validUntil: '2099-01-01' };
  const send = async (id: string) =>
    (await surveyor.post(`/v1/quotations/${id}/sending`).expect(200)).body as { textSha256: string };
  const accepted = await make(`${path}/quotations`, offer);
  const { textSha256 } = await send(accepted.id);
  await owner.as
    .post(`/v1/quotations/${accepted.id}/acceptance`)
    .send({ typedName: name, textSha256 })
    .expect(200);
  const waiting = await make(`${path}/quotations`, { ...offer, scope: 'The engine too.' });
  await send(waiting.id);
  const draft = await make(`${path}/quotations`, offer);

  const place = { place: 'Ropewalk Yard', condition: 'ashore', note: 'Keys at the office.' };
  const time = { startsAt: inDays(9, 10), endsAt: inDays(9, 14) };
  await make(`${path}/visits`, { ...place, ...time, partyIds: [partyId] });
  const made = await make(`${path}/visits`, { ...place, startsAt: inDays(-3, 10), endsAt: inDays(-3, 12) });
  await surveyor.post(`/v1/visits/${made.id}/attendance`).expect(200);

  const sentInvoice = await make(`${path}/invoices`, { quotationId: accepted.id });
  await surveyor.post(`/v1/invoices/${sentInvoice.id}/sending`).expect(200);
  await surveyor
    .post(`/v1/invoices/${sentInvoice.id}/payments`)
    .send({ amount: 10_000, paidOn: new Date().toISOString().slice(0, 10), note: 'Deposit' })
    .expect(201);
  const draftInvoice = await make(`${path}/invoices`, { billTo: name, lines: [line] });
  return {
    ...{ id: survey.id, waiting: waiting.id, accepted: accepted.id, draft: draft.id },
    ...{ sentInvoice: sentInvoice.id, draftInvoice: draftInvoice.id },
  };
}

const at =
  (rest: (engaged: Engaged) => string) =>
  ({ engaged }: { engaged: Engaged }) =>
    rest(engaged);
const page = at(({ id }) => `/surveys/${id}/engagement`);
const quotation = (which: 'waiting' | 'accepted' | 'draft', rest = '') =>
  at((engaged) => `/surveys/${engaged.id}/quotations/${engaged[which]}${rest}`);
const invoice = (which: 'sentInvoice' | 'draftInvoice') => at((engaged) => `/invoices/${engaged[which]}`);
const nothing = ({ empty }: { empty: string }) => `/surveys/${empty}/engagement`;

/** Every page of the engagement in every state that looks different. */
export const engagementVisits: readonly Visit[] = [
  { as: 'surveyor', path: page, reads: 'Handing the report over' },
  { as: 'surveyor', path: nothing, state: 'nothing arranged', reads: 'No visit arranged yet' },
  {
    ...{ as: 'surveyor', path: page, state: 'arranging a visit', reads: 'Handing the report over' },
    act: (visitor) => visitor.press('Arrange a visit'),
  },
  {
    ...{ as: 'surveyor', path: page, state: 'calling a visit off', reads: 'Handing the report over' },
    act: (visitor) => visitor.press('Call off the visit at Ropewalk Yard'),
  },
  { as: 'owner', path: page, state: 'client', reads: 'Read the quotation and its terms' },
  {
    ...{ as: 'surveyor', reads: 'By your firm’s rates', state: 'new quotation' },
    path: at(({ id }) => `/surveys/${id}/quotations/new`),
    act: async (visitor) => {
      await visitor.press('Fill the lines from these');
      await visitor.press('Save the draft');
      await visitor.reads('Say what is surveyed');
    },
  },
  { as: 'surveyor', path: quotation('draft'), state: 'draft', reads: 'Send it with our terms' },
  { as: 'surveyor', path: quotation('draft', '/edit'), reads: 'Can be accepted until' },
  { as: 'surveyor', path: quotation('accepted'), state: 'accepted', reads: 'What was accepted (PDF)' },
  {
    ...{ as: 'owner', path: quotation('waiting'), state: 'to decide on', reads: 'Your decision' },
    act: async (visitor) => {
      await visitor.press('Accept the fee and the terms');
      await visitor.reads('Type your own name');
    },
  },
  {
    ...{ as: 'owner', path: quotation('waiting'), state: 'declining', reads: 'Your decision' },
    act: (visitor) => visitor.press('Decline…'),
  },
  { as: 'surveyor', path: at(({ id }) => `/surveys/${id}/invoices/new`), reads: 'Made out to' },
  { as: 'surveyor', path: () => '/invoices', reads: 'Take these as CSV' },
  { as: 'surveyor', path: invoice('sentInvoice'), state: 'part-paid', reads: 'Record what came in' },
  { as: 'surveyor', path: invoice('draftInvoice'), state: 'draft', reads: 'Give it a number and send it' },
  { as: 'owner', path: invoice('sentInvoice'), state: 'client', reads: 'How to pay' },
  {
    ...{ as: 'principal', path: () => '/firm', state: 'rates', reads: 'Change the rates' },
    act: (visitor) => visitor.press('Change the rates'),
  },
  {
    ...{ as: 'principal', path: () => '/firm', state: 'terms', reads: 'Write a new version' },
    act: (visitor) => visitor.press('Write a new version'),
  },
  {
    ...{ as: 'office', path: () => '/account', state: 'calendar', reads: 'Your visits in your own calendar' },
    act: async (visitor) => {
      await visitor.press('Make an address');
      await visitor.reads('Address of your calendar');
    },
  },
];
