import { findChromium } from '@garboard/platform/chromium';
import { openMailer } from '@garboard/platform/mail';
import { renderReportJob } from '@garboard/worker/jobs/render-report';
import { WarmBrowser } from '@garboard/worker/render/browser';
import type { Stage } from './stage.ts';

/** Prints reports as the worker does, but on a day in the past. */
export interface Press {
  print(firmId: string, reportId: string, at: Date): Promise<void>;
  close(): Promise<void>;
}

export async function openPress(stage: Stage): Promise<Press> {
  const browser = new WarmBrowser(() => findChromium(stage.env));
  const { env, db, store, log } = stage;
  const mail = openMailer({ ...env, from: 'garboard@localhost' });
  return {
    async print(firmId, reportId, at) {
      const deps = { db, store, log, env, browser, mail, clock: () => at };
      await renderReportJob(deps, { firmId, reportId }, { lastAttempt: true });
    },
    close: () => browser.close(),
  };
}
