import type { Survey } from '@garboard/contract/surveys';
import { purposeLabels, surveyStateLabels } from '@garboard/trade/vocabulary';
import type { ReactNode } from 'react';
import { Link, useLocation } from 'wouter';
import { isStatus } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { isStaffOf } from '../../app/roles.ts';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { KeyHelp } from '../../ui/KeyHelp.tsx';
import { Page } from '../../ui/Page.tsx';

/** Fetches a survey for the pages about it; says so when it isn't there for this person. */
export function WithSurvey({ id, children }: { id: string; children: (survey: Survey) => ReactNode }) {
  const survey = useAnswer('getSurvey', { params: { id } });
  if (isStatus(survey.error, 404) || isStatus(survey.error, 422)) return <NotFound />;
  if (survey.data) return children(survey.data);
  if (survey.error) return <ErrorNotice error={survey.error} onRetry={() => void survey.refetch()} />;
  return <Loading what="the survey" />;
}

/** The frame of every page of a survey's own workspace: which survey, and its sections by name. */
export function SurveyFrame({
  survey,
  title,
  action,
  children,
}: {
  survey: Survey;
  title: string;
  action?: ReactNode;
  children: ReactNode;
}) {
  return (
    <Page
      title={title}
      windowTitle={`${title}, ${survey.vesselName} ${survey.number}`}
      over={
        <>
          <strong>
            <Link href={`/surveys/${survey.id}`}>
              {survey.vesselName}, {survey.number}
            </Link>
          </strong>
          {' · '}
          {purposeLabels[survey.purpose]} · {surveyStateLabels[survey.state]}
        </>
      }
      above={isStaffOf(survey) ? <Sections survey={survey} /> : null}
      action={action}
    >
      {children}
      {isStaffOf(survey) ? (
        <p className="page-foot">
          <KeyHelp />
        </p>
      ) : null}
    </Page>
  );
}

/** The pages that belong to a section. */
const pages = (place: string): string[] =>
  place === '/engagement'
    ? [place, '/quotations', '/invoices']
    : place === '/clearance'
      ? [place, '/re-inspection']
      : place === '/findings'
        ? [place, '/bring-in']
        : [place];

function Sections({ survey }: { survey: Survey }) {
  const [path] = useLocation();
  const sections: [string, string][] = [
    ['', 'Particulars'],
    ['/engagement', 'Engagement'],
    ['/attendances', `Attendances ${survey.attendances.length}`],
    ['/photos', `Photos ${survey.photoCount ?? ''}`],
    ['/findings', `Findings ${survey.findingCount}`],
    ['/worksheets', 'Measurements'],
    ['/coverage', 'Coverage'],
    ['/equipment', 'Equipment'],
    ['/parties', 'Parties'],
    ['/review', 'Review'],
    ['/report', 'Report'],
    ...(survey.issuedAt ? [['/clearance', 'Clearance'] satisfies [string, string]] : []),
    ['/history', 'History'],
  ];
  const home = `/surveys/${survey.id}`;
  return (
    <nav aria-label="This survey">
      <ul className="section-nav">
        {sections.map(([place, label]) => {
          const here = place ? pages(place).some((page) => path.startsWith(home + page)) : path === home;
          return (
            <li key={place}>
              <Link href={home + place} aria-current={here ? 'page' : undefined}>
                {label}
              </Link>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}
