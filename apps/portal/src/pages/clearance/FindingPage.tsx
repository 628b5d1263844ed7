import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { harmLabels, systemLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { pathOf } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAnswer, useList } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { isStaffOf, mayDo } from '../../app/roles.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { listed } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { DueDate, UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { EventSteps } from '../surveys/EventSteps.tsx';
import { WithSurvey } from '../surveys/SurveyFrame.tsx';
import { Measured } from '../worksheets/Measured.tsx';
import { Comments } from './Comments.tsx';
import { limitWords } from './decide/Decided.tsx';
import { Evidence } from './Evidence.tsx';
import { Extensions, GiveTime } from './Extensions.tsx';
import { FindingPhotos, FindingWords } from './FindingRead.tsx';
import { stateWords } from './stateWords.ts';
import { WithdrawFinding, Withdrawn } from './WithdrawFinding.tsx';

/** One finding: what was seen, its photos, and what has been done about it since. */
export default function FindingPage({ id }: { id: string }) {
  const finding = useAnswer('getFinding', { params: { id } });
  if (isStatus(finding.error, 404) || isStatus(finding.error, 422)) return <NotFound />;
  if (finding.data) {
    const found = finding.data;
    return (
      <WithSurvey id={found.surveyId}>{(survey) => <FindingOf survey={survey} finding={found} />}</WithSurvey>
    );
  }
  if (finding.error) return <ErrorNotice error={finding.error} onRetry={() => void finding.refetch()} />;
  return <Loading what="the finding" />;
}

function FindingOf({ survey, finding }: { survey: Survey; finding: Finding }) {
  const asked = finding.may.decide
    ? 'Decide on the evidence'
    : finding.may.sendEvidence
      ? 'Send evidence'
      : '';
  return (
    <Page
      title={`${finding.number}. ${finding.title}`}
      windowTitle={`Finding ${finding.number}, ${survey.vesselName} ${survey.number}`}
      over={
        <Link href={isStaffOf(survey) ? `/surveys/${survey.id}/findings` : `/surveys/${survey.id}`}>
          {survey.vesselName}, {survey.number}
        </Link>
      }
      under={<UrgencyGauge urgency={finding.urgency} withinDays={finding.withinDays} />}
      action={
        asked || finding.may.edit ? (
          <>
            {asked ? (
              <a className="button button-main" href="#evidence">
                {asked}
              </a>
            ) : null}
            {finding.may.edit ? (
              <ButtonLink href={`/surveys/${survey.id}/findings/${finding.id}/edit`}>
                Edit the finding
              </ButtonLink>
            ) : null}
          </>
        ) : null
      }
    >
      <div className="stack-wide">
        {finding.withdrawal ? <Withdrawn withdrawal={finding.withdrawal} timeZone={survey.timeZone} /> : null}
        <Facts
          facts={[
            ['State', <strong key="state">{stateWords(finding)}</strong>],
            ...(finding.requiresClearing ? [['Due', <Due key="due" finding={finding} />] as const] : []),
            ...(finding.limit
              ? [['Within this limit', limitWords(finding.limit.text, finding.limit.until)] as const]
              : []),
            ['System', systemLabels[finding.system]],
            ...(finding.harms.length
              ? [['What could come of it', listed(finding.harms.map((harm) => harmLabels[harm]))] as const]
              : []),
          ]}
        />
        <FindingWords finding={finding} />
        <FindingPhotos finding={finding} />
        <Measured worksheets={finding.worksheets} href={(id) => `/worksheets/${id}`} />
        {mayDo('evidence.read', survey) && finding.state !== 'draft' && mayBeCleared(finding) ? (
          <>
            <Extensions finding={finding} timeZone={survey.timeZone} />
            <Evidence survey={survey} finding={finding} />
          </>
        ) : null}
        {mayDo('comment.read', survey) && finding.state !== 'draft' ? (
          <Comments survey={survey} finding={finding} />
        ) : null}
        {mayDo('finding.preview', survey) && finding.state !== 'withdrawn' ? (
          <p>
            <a href={pathOf('previewFinding', { id: finding.id })} target="_blank" rel="noreferrer">
              See it as it is printed
            </a>
          </p>
        ) : null}
        {finding.may.withdraw ? <WithdrawFinding finding={finding} /> : null}
        <FindingHistory survey={survey} finding={finding} />
      </div>
    </Page>
  );
}

/** The last day, and the way to a later one. */
function Due({ finding }: { finding: Finding }) {
  return (
    <>
      <DueDate dueOn={finding.dueOn} overdue={finding.overdue} />
      {finding.may.extend ? <GiveTime finding={finding} /> : null}
    </>
  );
}

/** Also a note may have had evidence sent, where the firm's rule has changed since. */
function mayBeCleared(finding: Finding): boolean {
  return (
    finding.requiresClearing || finding.may.sendEvidence || finding.may.decide || finding.state !== 'open'
  );
}

/** Every step with who and when; left out for those who may not see it. */
function FindingHistory({ survey, finding }: { survey: Survey; finding: Finding }) {
  const list = useList('listFindingEvents', { params: { id: finding.id } });
  if (isStatus(list.error, 403) || isStatus(list.error, 404)) return null;
  return (
    <section className="stack">
      <h2>History</h2>
      <MoreList list={list} what="the history" empty={<p>Nothing has happened since it was issued.</p>}>
        {(events) => <EventSteps events={events} timeZone={survey.timeZone} />}
      </MoreList>
    </section>
  );
}
