import { inTransaction } from '@garboard/db/database';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { issueReport } from '../support/issue-report.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { fee, rates, type Setting, setting, surveyWith } from './setting.ts';

let server: TestServer;
let at: Setting;
beforeAll(async () => {
  server = await startServer();
  at = await setting(server);
});
afterAll(() => server.close());

const body = { billTo: 'Ines Tolland\n3 Quay Row', lines: [fee] };
const today = () => new Date().toISOString().slice(0, 10);

async function invoiced(of: Setting = at) {
  const survey = await surveyWith(server, of, ['owner', 'broker', 'insurer']);
  await inTransaction(server.db, [of.firm.id], (tx) =>
    tx.party.update({ where: { id: survey.owner.partyId }, data: { client: true } }),
  );
  const draft = await of.office.post(`${survey.path}/invoices`).send(body).expect(201);
  return { survey, path: `/v1/invoices/${draft.body.id}`, draft: draft.body };
}
const pay = (of: Setting, path: string, amount: number) =>
  of.office.post(`${path}/payments`).send({ amount, paidOn: today(), note: 'Bank, 4 May' });

describe('an invoice', () => {
  it('is drafted unseen, numbered when sent, part-paid and paid', async () => {
    const { survey, path, draft } = await invoiced();
    // 11.28 m at 24.50 is 276.36; 20% of it 55.272, so 55.27.
    expect(draft).toMatchObject({ number: null, state: 'draft', net: 27_636, tax: 5_527, total: 33_163 });
    await survey.owner.as.get(path).expect(404);
    await at.office.patch(path).send({ billTo: 'Ines Tolland' }).expect(200);
    const { body: sent } = await at.office.post(`${path}/sending`).expect(200);
    expect(sent).toMatchObject({ state: 'sent', issuedOn: today(), dueOn: at.day(14), overdue: false });
    expect(sent.number).toMatch(/^\d{4}-\d{4}$/);
    await at.office.post(`${path}/sending`).expect(409);
    await at.office.patch(path).send({ billTo: 'x' }).expect(409);
    const seen = await survey.owner.as.get(path).expect(200);
    expect(seen.body).toMatchObject({ number: sent.number, paymentWords: 'By bank transfer.' });
    await survey.broker.as.get(path).expect(404);
    await survey.owner.as.post(`${path}/payments`).send({ amount: 1, paidOn: today() }).expect(403);

    const part = await pay(at, path, 10_000).expect(201);
    expect(part.body).toMatchObject({ state: 'part-paid', paid: 10_000 });
    const over = await pay(at, path, 23_164).expect(422);
    expect(over.body.errors[0].detail).toContain('231.63 EUR');
    const future = { amount: 1, paidOn: at.day(3) };
    await at.office.post(`${path}/payments`).send(future).expect(422);
    const whole = await pay(at, path, 23_163).expect(201);
    expect(whole.body.state).toBe('paid');
    await pay(at, path, 1).expect(409);
    // What the bank wrote is the firm's.
    expect((await survey.owner.as.get(path)).body).toMatchObject({ paid: 33_163, payments: [] });
    const mistaken = whole.body.payments[1].id;
    const back = await at.office.delete(`${path}/payments/${mistaken}`).expect(200);
    expect(back.body).toMatchObject({ state: 'part-paid', paid: 10_000 });
    await at.office.delete(`${path}/payments/${mistaken}`).expect(404);
    await at.office.post(`${path}/voiding`).send({ reason: 'Wrong boat.' }).expect(409);
  });

  it('takes what two record at once, each once', async () => {
    const { path } = await invoiced();
    await at.office.post(`${path}/sending`).expect(200);
    const both = await Promise.all([pay(at, path, 20_000), pay(at, path, 20_000)]);
    expect(both.map((r) => r.status).sort()).toEqual([201, 422]);
    expect((await at.office.get(path)).body.paid).toBe(20_000);
  });

  it('comes from an accepted quotation as it stands', async () => {
    const survey = await surveyWith(server, at, ['buyer']);
    const quotation = await at.office
      .post(`${survey.path}/quotations`)
      .send({ partyId: survey.buyer.partyId, lines: [fee], scope: 'Hull.', validUntil: at.day(9) })
      .expect(201);
    const quotationId: string = quotation.body.id;
    const ask = () => at.office.post(`${survey.path}/invoices`).send({ quotationId });
    await ask().expect(409);
    const { body: sent } = await at.office.post(`/v1/quotations/${quotationId}/sending`).expect(200);
    await survey.buyer.as
      .post(`/v1/quotations/${quotationId}/acceptance`)
      .send({ typedName: 'Ines Tolland', textSha256: sent.textSha256 })
      .expect(200);
    const made = await ask().expect(201);
    expect(made.body).toMatchObject({ billTo: survey.buyer.person.name, total: sent.total, taxName: 'VAT' });
    await at.office.post(`${survey.path}/invoices`).send({ billTo: 'x' }).expect(422);
  });

  it('has a number per firm and year without gaps, however many are sent at once', async () => {
    const own = await setting(server);
    const drafts = await Promise.all(Array.from({ length: 8 }, () => invoiced(own)));
    // Of these one is discarded and one sent twice; neither uses up a number.
    const [first, second, ...rest] = drafts.map((d) => d.path);
    await own.office.post(`${first}/voiding`).send({ reason: 'Not needed.' }).expect(200);
    const sends = [second, second, ...rest].map((path) => own.office.post(`${path}/sending`));
    const answers = await Promise.all(sends);
    const numbers = answers.flatMap((r) => (r.status === 200 ? [r.body.number] : [])).sort();
    const year = new Date().getUTCFullYear();
    expect(numbers).toEqual(Array.from({ length: 7 }, (_, i) => `${year}-000${i + 1}`));
  });

  it('is exported as CSV (RFC 4180) that a spreadsheet can’t take for formulas', async () => {
    const own = await setting(server);
    const { path } = await invoiced(own);
    await own.office.patch(path).send({ billTo: '=HYPERLINK("x"),\n"Quay" Row' }).expect(200);
    await own.office.post(`${path}/sending`).expect(200);
    await pay(own, path, 10_000).expect(201);
    await invoiced(own);
    const answer = await own.office.get('/v1/invoices.csv').buffer(true).expect(200);
    expect(answer.headers['content-type']).toContain('text/csv');
    expect(answer.text.split('\r\n').length).toBe(4);
    const rows: Record<string, string>[] = parse(answer.text, { bom: true, columns: true });
    expect(rows[0]).toMatchObject({ state: 'Draft', number: '', total: '331.63' });
    expect(rows[1]).toMatchObject({
      ...{ state: 'Partly paid', bill_to: '\'=HYPERLINK("x"),\n"Quay" Row', currency: 'EUR', net: '276.36' },
      ...{ tax: '55.27', total: '331.63', paid: '100.00', open: '231.63', last_paid_on: today() },
    });
    const unpaid = await own.office.get('/v1/invoices?state=unpaid').expect(200);
    expect(unpaid.body.items).toHaveLength(1);
    expect((await own.office.get('/v1/invoices?state=overdue')).body.items).toEqual([]);
    expect((await own.office.get('/v1/invoices?q=hyperlink')).body.items).toHaveLength(1);
  });
});

describe('the rule by which an issued report is handed over', () => {
  async function issued(of: Setting) {
    const made = await invoiced(of);
    const { survey } = made;
    await of.surveyor.patch(survey.path).send({ state: 'drafting', scope: 'All.' }).expect(200);
    await answerAllCoverage(of.surveyor, survey.id);
    const attendances = [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }];
    await of.surveyor.patch(survey.path).send({ attendances }).expect(200);
    await of.surveyor
      .post(`${survey.path}/findings`)
      .send({
        ...{ system: 'gas', title: 'Hose past its date', urgency: 'before-use' },
        ...{ observed: 'Dated 2009.', recommendation: 'Renew it.' },
      })
      .expect(201);
    await issueReport(server, of.firm.id, of.surveyor, survey.id);
    return made;
  }
  const shown = async (made: Awaited<ReturnType<typeof issued>>) => {
    const findings = await made.survey.owner.as.get(`/v1/surveys/${made.survey.id}/findings`);
    return findings.status === 200 && findings.body.items.length > 0;
  };

  it('withholds it until it is paid for, and again when the payment is taken back', async () => {
    const own = await setting(server, 'when-paid');
    const made = await issued(own);
    expect(await shown(made)).toBe(false);
    const release = `${made.survey.path}/release`;
    expect((await own.office.get(release)).body).toMatchObject({
      rule: 'when-paid',
      settled: true,
      held: true,
    });
    await made.survey.owner.as.get(release).expect(403);
    await own.office.post(`${made.path}/sending`).expect(200);
    await pay(own, made.path, 33_000).expect(201);
    expect(await shown(made)).toBe(false);
    const last = await pay(own, made.path, 163).expect(201);
    expect(await shown(made)).toBe(true);
    const events = await own.office.get(`${made.survey.path}/events`).expect(200);
    const kinds = events.body.items.map((e: { kind: string }) => e.kind);
    expect(kinds).toEqual(expect.arrayContaining(['report.held', 'report.handed-over']));
    await own.office.delete(`${made.path}/payments/${last.body.payments[1].id}`).expect(200);
    expect(await shown(made)).toBe(false);
    // The principal's word opens it all the same.
    await own.surveyor.post(release).send({ reason: 'x' }).expect(403);
    await own.principal.post(release).send({ reason: '' }).expect(422);
    const word = await own.principal.post(release).send({ reason: 'Cheque seen.' }).expect(200);
    expect(word.body).toMatchObject({ held: false, reason: 'Cheque seen.', wordBy: own.firm.principal.name });
    expect(await shown(made)).toBe(true);
    await own.principal.post(release).send({ reason: 'Again.' }).expect(409);
  });

  it('keeps the rule of the day of the first issue', async () => {
    const own = await setting(server, 'on-word');
    const made = await issued(own);
    await own.principal
      .put(`/v1/firms/${own.firm.id}/rates`)
      .send({ ...rates, releaseRule: 'at-once' })
      .expect(200);
    await own.office.post(`${made.path}/sending`).expect(200);
    await pay(own, made.path, 33_163).expect(201);
    expect(await shown(made)).toBe(false);
    await own.principal.post(`${made.survey.path}/release`).send({ reason: 'Agreed.' }).expect(200);
    expect(await shown(made)).toBe(true);
  });

  it('hands over at once where the firm says nothing else', async () => {
    const made = await issued(at);
    expect(await shown(made)).toBe(true);
    await at.principal.post(`${made.survey.path}/release`).send({ reason: 'x' }).expect(409);
  });
});
