import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Complaints, openBrowser, Visitor } from '../browser/visitor.ts';
import { startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  server = await startServer();
  browser = await openBrowser();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

it('the interface’s reading page works under the policy of every page, and asks nobody else', async () => {
  const complaints: Complaints = [];
  const reader = await Visitor.arrive(browser, server.url, complaints);
  const asked = new Set<string>();
  reader.page.on('request', (request) => {
    if (!request.url().startsWith('data:')) asked.add(new URL(request.url()).origin);
  });
  await reader.goTo('/docs/');
  await reader.page.waitForFunction(() => document.body.textContent.includes('/v1/me'), { timeout: 90_000 });
  await reader.leave();
  expect(complaints).toEqual([]);
  expect([...asked]).toEqual([server.url]);
}, 180_000);
