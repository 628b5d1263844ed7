import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import axe, { type AxeResults, type RunOptions } from 'axe-core';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { startTestWorker, type TestWorker } from '../support/worker.ts';
import { type Visit, visits } from './axe-visits.ts';
import { makeWorld, password, type Role, type World } from './axe-world.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

/** WCAG 2.2 A and AA, and what axe holds to be good practice; all of its rules for these. */
const rules: RunOptions = {
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
  rules: { 'target-size': { enabled: true } },
  resultTypes: ['violations'],
};

let server: TestServer;
let worker: TestWorker;
let browser: Browser;
let world: World;
const complaints: Complaints = [];
const windows = new Map<Role, Visitor>();
/** Windows that stand on a page of somebody signed in, with nothing begun there. */
const atRest = new Set<Role>();

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  worker = await startTestWorker(server);
  world = await makeWorld(server);
  browser = await openBrowser();
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await worker?.close();
  await server?.close();
});

async function windowOf(role: Role): Promise<Visitor> {
  const open = windows.get(role);
  if (open) return open;
  const visitor = await Visitor.arrive(browser, server.url, complaints);
  if (role !== 'nobody') await visitor.signIn(world.people[role], password);
  // A state that was begun and not saved yet is left all the same.
  visitor.page.on('dialog', (dialog) => void dialog.accept());
  windows.set(role, visitor);
  return visitor;
}

/**
 * Goes to the page of a visit: within the portal, as a link would, where nothing was begun on the page before; else as
 * from outside. The former is what people do, and takes half as long.
 */
async function arrive(visitor: Visitor, { as, path }: Visit): Promise<void> {
  const { page } = visitor;
  const there = path(world);
  const within =
    atRest.has(as) &&
    (await page.evaluate((address) => {
      const heading = document.querySelector('h1');
      if (!heading || address.includes('#')) return false;
      heading.dataset.before = '';
      history.pushState(null, '', address);
      return true;
    }, there));
  // A page that keeps the heading of the one before can't be told from it.
  const come = async () =>
    within &&
    (await page
      .waitForFunction(() => document.querySelector('h1:not([data-before])'), { timeout: 2_000 })
      .catch(() => null)) !== null;
  if (await come()) return;
  // Not from the page before: an address that differs after the # alone would keep it.
  await page.goto('about:blank');
  await visitor.goTo(there);
}

/** What axe finds on the page as it stands, a line each: rule, place, and what is wrong there. */
async function violations({ page }: Visitor): Promise<string[]> {
  const found = (await page.evaluate(
    (options) => (window as unknown as { axe: typeof axe }).axe.run(options),
    rules,
  )) as AxeResults;
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(
      (node) => `${id} at ${node.target.join(' ')}: ${node.failureSummary?.split('\n').slice(1).join(';')}`,
    ),
  );
}

describe('axe finds nothing wrong', { timeout: 90_000 }, () => {
  // The first state of each page; `npm run drills` goes through all of them.
  const seen = new Set<string>();
  const named = visits.map((visit, at) => ({ visit, at, as: visit.as, words: visit.state ?? visit.reads }));
  it.for(named)('$as: $words', async ({ visit }, { skip }) => {
    const state = `${visit.as} ${visit.path(world)}`;
    if (seen.has(state) && process.env.DRILLS !== '1') skip();
    seen.add(state);
    const visitor = await windowOf(visit.as);
    const { page } = visitor;
    await page.setViewport({ width: 1280, height: 900 });
    await arrive(visitor, visit);
    atRest.delete(visit.as);
    await visitor.reads(visit.reads);
    await visit.act?.(visitor);
    await visitor.standsStill(200);
    // Nothing of it is sent back.
    if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(`${axe.source};0`);
    const wide = await violations(visitor);
    await page.setViewport({ width: 360, height: 740 });
    await visitor.standsStill(100);
    const narrow = await violations(visitor);
    if (!visit.act && visit.as !== 'nobody') atRest.add(visit.as);
    expect({ address: page.url(), wide, narrow }).toMatchObject({ wide: [], narrow: [] });
  });
});

describe('the visits', () => {
  /** A route of wouter as an expression over whole addresses. */
  const expressionOf = (route: string) =>
    new RegExp(
      `^${route
        .replace(/\/:\w+\?/g, '(?:/[^/]+)?')
        .replace(/\/\*\?/g, '(?:/.*)?')
        .replace(/:\w+/g, '[^/]+')}/?$`,
    );

  const portal = 'apps/portal/src';

  /** The routes written in a source file, in the order in which they are tried. */
  function routesIn(source: string): { route: string; matches: RegExp }[] {
    const found = [...source.matchAll(/<Route\s+path=(?:"([^"]+)"|\{\/(.+)\/\})/g)];
    // One written in yet another way isn't passed over.
    expect(found).toHaveLength([...source.matchAll(/<Route\s+path=/g)].length);
    return found.map(([, plain, expression]) => ({
      route: plain ?? expression ?? '',
      matches: expression ? new RegExp(expression) : expressionOf(plain ?? ''),
    }));
  }

  it('come to every route of the portal, so that a new page is looked at too', async () => {
    const files = (await readdir(portal, { recursive: true })).filter((file) => file.endsWith('.tsx'));
    const sources = await Promise.all(files.map((file) => readFile(join(portal, file), 'utf8')));
    const groups = sources.map(routesIn).filter((routes) => routes.length > 0);
    expect(groups.flat().length).toBeGreaterThan(40);
    const paths = visits.map((visit) => visit.path(world).replace(/[?#].*$/, ''));
    const left = groups.flatMap((routes) => {
      const visited = new Set(paths.map((path) => routes.find(({ matches }) => matches.test(path))?.route));
      return routes.map(({ route }) => route).filter((route) => !visited.has(route));
    });
    expect(left).toEqual([]);
  });

  it('raised no script error and nothing against the content policy', () => {
    // Refusals by the server are part of some of the states.
    expect(complaints.filter((line) => !/^\d{3} /.test(line))).toEqual([]);
  });
});
