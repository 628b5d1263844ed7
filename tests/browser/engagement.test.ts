import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const complaints: Complaints = [];
let server: TestServer;
let worker: TestWorker;
let browser: Browser;
let path: string;
let principal: Visitor;
let client: Visitor;
let yard: Visitor;

async function visit(person: Signed): Promise<Visitor> {
  const visitor = await Visitor.arrive(browser, server.url, complaints);
  await visitor.signIn(person, password);
  return visitor;
}

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  worker = await startTestWorker(server);
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['principal']);
  const buyer = await buildPerson(server.db, { name: 'Corvin Eastermoor' });
  const lift = await buildPerson(server.db, { name: 'Gethin Stonecleat' });
  const passwordHash = await hashPassword(password);
  const id = { in: [firm.principal.id, buyer.id, lift.id] };
  await inTransaction(server.db, [], (tx) => tx.person.updateMany({ where: { id }, data: { passwordHash } }));
  const api = server.as(firm.principal);
  const vessel = await api.post('/v1/vessels').send({ name: 'Sedge Warbler', lengthOverallM: 11.28 });
  const body = { vesselId: vessel.body.id, purpose: 'pre-purchase', timeZone: 'Europe/Lisbon' };
  const survey = await api.post('/v1/surveys').send(body).expect(201);
  path = `/surveys/${survey.body.id}`;
  for (const [role, { name, email }] of Object.entries({ buyer, yard: lift })) {
    await api.post(`/v1${path}/parties`).send({ role, name, email, released: true }).expect(201);
  }
  principal = await visit(firm.principal);
  client = await visit(buyer);
  yard = await visit(lift);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await worker?.close();
  await server?.close();
});

describe('from enquiry to paid, each in their own window', { timeout: 120_000 }, () => {
  it('the firm sets rates and terms', async () => {
    await principal.goTo('/firm');
    await principal.press('Set your rates');
    await principal.fill('For length overall', '24.50');
    await principal.fill('For an hour', '95');
    await principal.fill('Minimum fee, before travel and tax', '450');
    await principal.fill('For travel', '0.42');
    await principal.fill('What the tax is called (optional)', 'VAT');
    await principal.fill('Tax, %', '20');
    await principal.fill('How to pay (optional)', 'By bank transfer, quoting the number of the invoice.');
    await principal.click('radio', 'When it is paid for');
    await principal.picture('engagement-rates');
    await principal.press('Save');
    await principal.reads('VAT 20%');
    await principal.press('Write your terms');
    await principal.fill('Terms of business', 'We look at what can be reached.\n\nWe take nothing apart.');
    await principal.press('Save as the next version');
    await principal.reads('Version 1, in use');
    await principal.picture('engagement-firm');
  });

  it('and sends the buyer a quotation by them', async () => {
    await principal.goTo(`${path}/engagement`);
    await principal.reads('No visit arranged yet');
    await principal.follow('Draft a quotation');
    await principal.fill('Hours', '6.5');
    await principal.fill('Travel there and back, km', '84.3');
    await principal.press('Fill the lines from these');
    // 276.36 by length, 617.50 by hour, 35.41 of travel; 20% of each, rounded for itself.
    await principal.reads('1,115.12 EUR');
    await principal.fill('What is surveyed', 'Hull, rig and systems, ashore and afloat.\n\nNot the engine.');
    await principal.picture('engagement-quotation-editor');
    expect(await principal.widthAt360('engagement-quotation-editor')).toBe(360);
    await principal.press('Save the draft');
    await principal.press('Send it with our terms');
    await principal.reads('Sent, awaiting the client');
    await principal.picture('engagement-quotation-sent');
  });

  it('the buyer reads and accepts it, and has the PDF', async () => {
    await client.goTo(path);
    await client.follow('See what the firm offers and asks, and when the boat is visited');
    await client.picture('engagement-client');
    await client.follow('Read the quotation and its terms');
    await client.reads('We take nothing apart.');
    expect(await client.widthAt360('engagement-accept')).toBe(360);
    await client.press('Accept the fee and the terms');
    await client.reads('Tick that you have read it, once you have.');
    await client.page.$eval('input[type="checkbox"]', (box) => box.click());
    await client.fill('Your name', 'Corvin Eastermoor');
    await client.picture('engagement-accept');
    await client.press('Accept the fee and the terms');
    await client.reads('What was accepted (PDF)');
    await client.reads('from 127.0.0.1');
    await client.picture('engagement-accepted');
  });

  it('the yard is asked to a visit and confirms it', async () => {
    await principal.goTo(`${path}/engagement`);
    await principal.press('Arrange a visit');
    await principal.fill('Place', 'Ropewalk Yard, slip 2');
    await principal.fill('To know (optional)', 'Keys at the office; lift at nine.');
    await principal.click('checkbox', 'Gethin Stonecleat, yard');
    await principal.picture('engagement-visit-form');
    await principal.press('Arrange it');
    await principal.reads('Gethin Stonecleat, yard: Asked, no answer yet');
    await yard.goTo(path);
    await yard.follow('See when the boat is visited, and answer if you are asked');
    await yard.fill('What the firm should know (optional)', 'Slings ready.');
    expect(await yard.widthAt360('engagement-yard')).toBe(360);
    await yard.press('Confirm');
    await yard.reads('Confirmed, “Slings ready.”');
    await yard.picture('engagement-yard');
    expect(await yard.text()).not.toContain('Fee and terms');
    await principal.goTo(`${path}/engagement`);
    await principal.reads('Gethin Stonecleat, yard: Confirmed, “Slings ready.”');
    await principal.picture('engagement');
    expect(await principal.widthAt360('engagement')).toBe(360);
    await principal.press('It was made: the visit at Ropewalk Yard, slip 2');
    await principal.reads('Attended');
  });

  it('has an address for a calendar', async () => {
    await yard.goTo('/account');
    await yard.press('Make an address');
    await yard.reads('Address of your calendar');
    const address = await yard.page.$eval('input[readonly]', (field) => (field as HTMLInputElement).value);
    const calendar = await fetch(new URL(new URL(address).pathname, server.url));
    expect(await calendar.text()).toContain('Survey of Sedge Warbler');
    await yard.press('Stop the address');
    await yard.press('Stop it');
    await yard.reads('Make an address');
  });

  it('and what was accepted is invoiced and paid', async () => {
    await principal.goTo(`${path}/engagement`);
    await principal.press('Invoice what was accepted');
    await principal.press('Give it a number and send it');
    await principal.reads('Record what came in');
    // What was just done is told at the foot of the window, over what stands there.
    await principal.readsNoMore('the client is told');
    await principal.fill('Amount, EUR', '1000');
    await principal.press('Record the payment');
    await principal.reads('Partly paid');
    await principal.reads('115.12 EUR');
    await principal.picture('engagement-invoice');
    expect(await principal.widthAt360('engagement-invoice')).toBe(360);
    await client.goTo(`${path}/engagement`);
    await client.reads('115.12 EUR');
    await principal.goTo('/invoices');
    await principal.reads('Sedge Warbler');
    await principal.picture('engagement-invoices');
    expect(complaints).toEqual([]);
  });
});
