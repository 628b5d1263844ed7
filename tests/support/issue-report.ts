import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { claimReport } from '@garboard/core/reports/claim-report';
import { finishReport } from '@garboard/core/reports/finish-report';
import type { IssuableKind } from '@garboard/core/reports/freeze-snapshot';
import { inTransaction } from '@garboard/db/database';
import type { Caller, TestServer } from './server.ts';

/** Asks for a report and finishes it as the worker would, without the printing; answers what it says. */
export async function issueReport(
  server: TestServer,
  firmId: string,
  surveyor: Caller,
  surveyId: string,
  kind: IssuableKind = 'full',
): Promise<ReportSnapshot> {
  const asked = await surveyor.post(`/v1/surveys/${surveyId}/reports`).send({ kind }).expect(202);
  const reportId: string = asked.body.id;
  const asWorker = <T>(work: (ctx: Parameters<typeof claimReport>[0]) => Promise<T>) =>
    inTransaction(server.db, [firmId], (tx) =>
      work({
        actor: { kind: 'system', firmIds: [firmId] },
        tx,
        store: server.store,
        clock: () => new Date(),
        log: console,
      }),
    );
  const claimed = await asWorker((ctx) => claimReport(ctx, reportId));
  if (!claimed) throw new Error('Nothing to claim.');
  const pdf = {
    ...{ sha256: 'cd'.repeat(32), pages: 3, bytes: 99 },
    ...{ renderer: 'Garboard 0.1.0', signedBy: 'Builders Survey' },
  };
  const done = await asWorker((ctx) => finishReport(ctx, { reportId, claim: claimed.claim, ...pdf }));
  if (!done) throw new Error('The report was taken over.');
  return (await surveyor.get(`/v1/reports/${reportId}/data`).expect(200)).body as ReportSnapshot;
}
