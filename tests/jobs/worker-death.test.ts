import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { getReport } from '@garboard/core/reports/get-report';
import { requestReport } from '@garboard/core/reports/request-report';
import { testSecret } from '@garboard/seed/builders';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { type Acting, asStaff, asWorker, publicUrl, writeSurvey } from './survey-rows.ts';

let server: TestServer;
let acting: Acting;
const children: ChildProcess[] = [];
beforeAll(async () => {
  server = await startServer();
  acting = { db: server.db, store: server.store, clock: () => new Date() };
});
afterAll(async () => {
  for (const child of children) child.kill('SIGKILL');
  await server.close();
});

function startProcess(): ChildProcess {
  const child = spawn(process.execPath, ['--import', 'tsx', 'apps/worker/src/main.ts'], {
    env: {
      ...process.env,
      DATABASE_URL: server.databaseUrl,
      DATA_DIR: server.dataDir,
      GARBOARD_SECRET: testSecret,
      LOG_LEVEL: 'warn',
    },
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  children.push(child);
  return child;
}

test('a worker killed while it prints loses nothing: another finishes, once, and ends when told to', async () => {
  const rows = await writeSurvey(server.db, 40);
  const { surveyId } = rows;
  const asked = await asStaff(acting, rows, (ctx) =>
    requestReport(ctx, { surveyId, kind: 'full', publicUrl }),
  );
  const reaches = (state: string, timeout: number) =>
    vi.waitFor(
      async () => {
        const report = await asStaff(acting, rows, (ctx) => getReport(ctx, asked.id));
        expect(report.state, `${report.stage} ${report.progress}`).toBe(state);
        return report;
      },
      { timeout, interval: 20 },
    );
  const first = startProcess();
  await reaches('rendering', 60_000);
  const died = once(first, 'exit');
  first.kill('SIGKILL');
  await died;
  const second = startProcess();
  const report = await reaches('issued', 100_000);
  expect(report.revision).toBe(1);
  const events = await asWorker(acting, rows.firmId, (ctx) =>
    ctx.tx.event.groupBy({ by: ['kind'], where: { surveyId }, _count: true, orderBy: { kind: 'asc' } }),
  );
  expect(events.map((e) => [e.kind, e._count])).toEqual([
    ['finding.issued', 40],
    ['report.issued', 1],
    ['report.requested', 1],
  ]);
  const ended = once(second, 'exit');
  second.kill('SIGTERM');
  expect(await ended).toEqual([0, null]);
}, 180_000);
