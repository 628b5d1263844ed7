import type { ReviewStanding } from '@garboard/contract/reviews';
import type { Survey } from '@garboard/contract/surveys';
import { reviewStateLabels } from '@garboard/trade/vocabulary';
import { useAnswer, useWholeList } from '../../api/queries.ts';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { formatInstant } from '../../ui/format.ts';
import { reviewSentence } from '../reports/reviewSentence.ts';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { AskReview } from './AskReview.tsx';
import { DecideReview } from './DecideReview.tsx';
import { ReviewedFinding } from './ReviewedFinding.tsx';
import { Threads } from './Threads.tsx';

/** The second surveyor's look at a record: every finding with what is said about it beside, and the decision. */
export default function Review({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <ReviewOf survey={survey} />}</WithSurvey>;
}

function ReviewOf({ survey }: { survey: Survey }) {
  const params = { id: survey.id };
  const standing = useAnswer('getReview', { params });
  const findings = useWholeList('listFindings', { params });
  const comments = useWholeList('listReviewComments', { params });
  const error = standing.error ?? findings.error ?? comments.error;
  const retry = () => {
    for (const answer of [standing, findings, comments]) if (answer.error) void answer.refetch();
  };
  return (
    <SurveyFrame survey={survey} title="Review">
      {error ? <ErrorNotice quiet error={error} onRetry={retry} /> : null}
      {standing.data && findings.data && comments.data ? (
        <div className="stack-wide">
          <Standing standing={standing.data} timeZone={survey.timeZone} />
          {standing.data.may.ask ? <AskReview survey={survey} /> : null}
          {standing.data.latest ? (
            <>
              <section className="stack">
                <h2>On the whole record</h2>
                <Threads
                  survey={survey}
                  about="the whole record"
                  comments={comments.data.filter((comment) => !comment.findingId)}
                  mayComment={standing.data.may.comment}
                />
              </section>
              <section className="stack">
                <h2>Findings</h2>
                {findings.data
                  .filter((finding) => finding.state !== 'withdrawn')
                  .map((finding) => (
                    <ReviewedFinding
                      key={finding.id}
                      survey={survey}
                      finding={finding}
                      comments={comments.data.filter((comment) => comment.findingId === finding.id)}
                      mayComment={standing.data.may.comment}
                    />
                  ))}
              </section>
            </>
          ) : null}
          {standing.data.may.decide ? (
            <DecideReview survey={survey} standing={standing.data} threads={standing.data.openThreads} />
          ) : null}
        </div>
      ) : error ? null : (
        <Loading what="the review" />
      )}
    </SurveyFrame>
  );
}

function Standing({ standing, timeZone }: { standing: ReviewStanding; timeZone: string }) {
  const { latest, required } = standing;
  return (
    <section className="stack">
      <p className="measure">
        <strong>{reviewSentence(standing)}</strong>
      </p>
      {latest ? (
        <Facts
          facts={[
            ['State', reviewStateLabels[latest.state]],
            ['Asked for by', `${latest.askedBy.name}, ${formatInstant(latest.askedAt, timeZone)}`],
            ...(latest.reviewer ? [['Asked of', latest.reviewer.name] as const] : []),
            ...(latest.note ? [['What to look at', latest.note] as const] : []),
            ...(latest.decidedBy && latest.decidedAt
              ? [['Decided by', `${latest.decidedBy}, ${formatInstant(latest.decidedAt, timeZone)}`] as const]
              : []),
            ...(latest.reason ? [['Remark', latest.reason] as const] : []),
          ]}
        />
      ) : (
        <p className="measure">
          A second surveyor reads the record through, comments on findings, and approves it or sends it back.{' '}
          {required ? '' : 'Your firm leaves it to you whether to ask.'}
        </p>
      )}
    </section>
  );
}
