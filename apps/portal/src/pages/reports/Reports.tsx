import type { Survey } from '@garboard/contract/surveys';
import { useAnswer, useList, useWholeList } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { DocumentTable, whileMaking } from './DocumentTable.tsx';
import { Drafts } from './Drafts.tsx';
import { IssueReport } from './IssueReport.tsx';
import { Letters } from './Letters.tsx';

/** Issuing the report and the letters, and everything issued so far. */
export default function Reports({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <ReportsOf survey={survey} />}</WithSurvey>;
}

function ReportsOf({ survey }: { survey: Survey }) {
  const list = useList('listReports', { params: { id: survey.id } }, { again: whileMaking });
  const findings = useWholeList('listFindings', { params: { id: survey.id } });
  const coverage = useAnswer('getCoverage', { params: { id: survey.id } });
  const review = useAnswer('getReview', { params: { id: survey.id } });
  const writer = mayDo('report.issue', survey);
  return (
    <SurveyFrame survey={survey} title="Report">
      <div className="stack-wide">
        {writer ? (
          <IssueReport
            survey={survey}
            findings={findings.data}
            coverage={coverage.data}
            review={review.data}
            reports={list.items}
          />
        ) : (
          <p>Reports are issued by the surveyor or the principal.</p>
        )}
        <Drafts survey={survey} />
        <section className="stack">
          <h2>Issued so far</h2>
          <MoreList
            list={list}
            what="the documents"
            empty={<p>Nothing has been issued for this survey yet.</p>}
          >
            {(items) => <DocumentTable reports={items} survey={survey} mayRetry={writer} />}
          </MoreList>
        </section>
        {writer && survey.issuedAt ? <Letters survey={survey} findings={findings.data} /> : null}
      </div>
    </SurveyFrame>
  );
}
