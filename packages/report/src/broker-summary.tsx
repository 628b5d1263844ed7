import type { SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { CostTotals } from './costs.tsx';
import { Cover } from './cover.tsx';
import { IndexOfFindings } from './index-of-findings.tsx';
import type { Sources } from './parts.tsx';
import { Statement } from './statement.tsx';
import { SummaryPage } from './summary-page.tsx';

/** A few pages for a broker: the summary and the findings by title and urgency; what was seen is in the report. */
export function BrokerSummary({ snapshot, photoUrl }: { snapshot: SurveyReportSnapshot } & Sources) {
  return (
    <>
      <Cover snapshot={snapshot} photoUrl={photoUrl} />
      <main>
        <SummaryPage snapshot={snapshot} readOn="index" />
        <IndexOfFindings findings={snapshot.findings} inFull={false} />
        <CostTotals findings={snapshot.findings} />
        <section className="keep">
          <h2>What this is, and is not</h2>
          <p>
            A summary of survey report {snapshot.survey.number}, released by the client for whom it was made.
            It names findings without what was seen, what could not be reached and what to do; only the report
            itself says that, and where the two differ the report holds. Nobody should buy, lend or insure on
            this summary alone.
          </p>
        </section>
        <Statement snapshot={snapshot} />
      </main>
    </>
  );
}
