import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { getReport } from '@garboard/core/reports/get-report';
import { requestReport } from '@garboard/core/reports/request-report';
import { retryReport } from '@garboard/core/reports/retry-report';
import { findChromium } from '@garboard/platform/chromium';
import { openLogger } from '@garboard/platform/logger';
import { openMailer } from '@garboard/platform/mail';
import { testSecret } from '@garboard/seed/builders';
import type { JobDeps } from '@garboard/worker/job-deps';
import { renderReportJob } from '@garboard/worker/jobs/render-report';
import { BrowserCrash, WarmBrowser } from '@garboard/worker/render/browser';
import type { Page } from 'puppeteer';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { chromiumDir } from '../support/worker.ts';
import { type Acting, asStaff, publicUrl, writeSurvey } from './survey-rows.ts';

let server: TestServer;
let acting: Acting;
let deps: JobDeps;
let browser: Crashing;
beforeAll(async () => {
  server = await startServer();
  browser = new Crashing(() => findChromium({ dataDir: chromiumDir }));
  acting = { db: server.db, store: server.store, clock: () => new Date() };
  const { db, store, dataDir } = server;
  deps = {
    ...{ db, store, clock: acting.clock, log: openLogger('test-crash', 'fatal') },
    env: { publicUrl, dataDir, secret: testSecret, webhookAllowPrivate: false },
    mail: openMailer({ dataDir, from: 'Garboard <no-reply@test.example>' }),
    browser,
  };
});
afterAll(async () => {
  await deps.browser.close();
  deps.mail.close();
  await server.close();
});

/** Ends Chromium as soon as it is at work on a page, when it is told to. */
class Crashing extends WarmBrowser {
  crashes = false;

  override withPage<T>(timeoutMs: number, use: (page: Page) => Promise<T>): Promise<T> {
    return super.withPage(timeoutMs, async (page) => {
      const work = use(page);
      work.catch(() => undefined);
      const pid = this.crashes ? await this.pid() : undefined;
      if (pid) process.kill(pid, 'SIGKILL');
      return work;
    });
  }
}

test('Chromium crashing is tried again, then failed with a reason, and can be asked for once more', async () => {
  const rows = await writeSurvey(server.db, 240);
  const { firmId, surveyId } = rows;
  const { id: reportId } = await asStaff(acting, rows, (ctx) =>
    requestReport(ctx, { surveyId, kind: 'full', publicUrl }),
  );
  const state = () => asStaff(acting, rows, (ctx) => getReport(ctx, reportId));
  const attempt = (lastAttempt: boolean) => renderReportJob(deps, { firmId, reportId }, { lastAttempt });

  browser.crashes = true;
  await expect(attempt(false)).rejects.toBeInstanceOf(BrowserCrash);
  // Not given up: the queue hands it out again.
  expect((await state()).state).toBe('rendering');
  await expect(attempt(true)).rejects.toBeInstanceOf(BrowserCrash);
  browser.crashes = false;
  const failed = await state();
  expect(failed.state).toBe('failed');
  expect(failed.problem).toContain('The program that prints the pages stopped');
  expect(await readdir(join(server.dataDir, 'print'))).toEqual([]);

  await asStaff(acting, rows, (ctx) => retryReport(ctx, reportId));
  await attempt(true);
  expect(await state()).toMatchObject({ state: 'issued', revision: 1, problem: null });
}, 120_000);
