import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

let server: TestServer;
let worker: TestWorker;
let browser: Browser;
let receiver: Server;
let status = 204;
const complaints: Complaints = [];

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  worker = await startTestWorker(server);
  browser = await openBrowser();
  receiver = createServer((_, response) => response.writeHead(status).end());
  await new Promise<void>((done) => receiver.listen(0, '127.0.0.1', done));
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await worker?.close();
  await server?.close();
  await new Promise((done) => receiver.close(done));
});

test('a principal has a system told, sees what became of it, and ends the account', async () => {
  const firm = await buildFirm(server.db, ['principal', 'office']);
  const password = 'halyard-thimble-quay-9';
  const passwordHash = await hashPassword(password);
  await inTransaction(server.db, [firm.id], (tx) =>
    tx.person.update({ where: { id: firm.principal.id }, data: { passwordHash } }),
  );
  const visitor = await Visitor.arrive(browser, server.url, complaints);
  await visitor.signIn(firm.principal, password);
  await visitor.goTo('/account');
  await visitor.follow('Systems that are told');
  await visitor.reads('No system is told yet');
  await visitor.press('Add a system');
  await visitor.fill('Name of the system', 'Policy register');
  await visitor.fill('Address', `http://127.0.0.1:${(receiver.address() as AddressInfo).port}/told`);
  await visitor.picture('systems-adding');
  await visitor.press('Add the system');
  await visitor.reads('Take the secret now');
  await visitor.picture('systems-secret');
  await visitor.press('I have it');
  await visitor.follow('Policy register');
  /** Opens the page again until it says so. */
  const becomes = (words: string) =>
    expect
      .poll(
        async () => {
          await visitor.goTo(new URL(visitor.page.url()).pathname);
          await visitor.reads('Trial message');
          return visitor.text();
        },
        { timeout: 60_000, interval: 1_000 },
      )
      .toContain(words);
  await visitor.press('Send a trial message');
  await visitor.reads('A trial message is on its way');
  await becomes('Delivered, ');
  status = 500;
  await visitor.press('Send a trial message');
  await becomes('Answered 500.');
  await visitor.picture('systems-one');
  expect(await visitor.widthAt360('systems-one-narrow')).toBeLessThanOrEqual(360);
  await visitor.goTo('/account');
  await visitor.press('Erase your account');
  await visitor.fill('Your e-mail address', firm.principal.email);
  await visitor.picture('account-erasing');
  await visitor.press('Erase my account for good');
  await visitor.reads('Make a colleague principal first');
  await inTransaction(server.db, [firm.id], (tx) =>
    tx.firmMember.updateMany({ where: { personId: firm.office.id }, data: { role: 'principal' } }),
  );
  await visitor.press('Erase my account for good');
  await visitor.find('button', 'Sign in');
  // Refused once, while there was no other principal.
  expect(complaints).toEqual(['409 POST /v1/me/erasure']);
}, 240_000);
