import type { Survey } from '@garboard/contract/surveys';
import { Link } from 'wouter';
import { isStaffOf, mayDo } from '../../app/roles.ts';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { HandingOver } from './HandingOver.tsx';
import { Quotations } from './Quotations.tsx';
import { SurveyInvoices } from './SurveyInvoices.tsx';
import { Visits } from './Visits.tsx';

/** What surrounds a survey: fee and terms, visits, invoices, and when the report is handed over. */
export default function Engagement({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <EngagementOf survey={survey} />}</WithSurvey>;
}

function EngagementOf({ survey }: { survey: Survey }) {
  const shown = {
    quotations: mayDo('quotation.read', survey),
    visits: mayDo('visit.read', survey),
    invoices: mayDo('invoice.read', survey),
    release: mayDo('release.read', survey),
  };
  return (
    <SurveyFrame survey={survey} title="Engagement">
      <div className="stack-wide">
        {isStaffOf(survey) ? null : (
          <p className="measure">
            With {survey.firmName}. <Link href={`/surveys/${survey.id}`}>Back to the survey</Link>
          </p>
        )}
        {shown.quotations ? <Quotations survey={survey} /> : null}
        {shown.visits ? <Visits survey={survey} /> : null}
        {shown.invoices ? <SurveyInvoices survey={survey} /> : null}
        {shown.release ? <HandingOver survey={survey} /> : null}
        {Object.values(shown).some(Boolean) ? null : (
          <p className="measure">
            Fee, terms and visits are arranged between the firm and those who pay for the survey or open the
            boat.
          </p>
        )}
      </div>
    </SurveyFrame>
  );
}
