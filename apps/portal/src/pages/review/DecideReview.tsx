import type { ReviewStanding } from '@garboard/contract/reviews';
import type { Survey } from '@garboard/contract/surveys';
import type { ReviewDecision } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { Link } from 'wouter';
import { call } from '../../api/client.ts';
import { fieldError, isStatus } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { RadioGroup, TextArea } from '../../ui/Field.tsx';
import { count } from '../../ui/format.ts';

const choices: Record<ReviewDecision, string> = {
  approve: 'Approve: it can be issued as it stands',
  'send-back': 'Send it back: something has to be done first',
};
const said: Record<ReviewDecision, string> = {
  approve: 'Approved. An edit from now on asks for another review.',
  'send-back': 'Sent back with your reason.',
};

/** The reviewer's decision on the record as it was read. */
export function DecideReview({
  survey,
  standing,
  threads,
}: {
  survey: Survey;
  standing: ReviewStanding;
  threads: number;
}) {
  // The record that is being read: a later answer must not slip a changed one under the decision.
  const [record, setRecord] = useState(standing.record);
  const [decision, setDecision] = useState<ReviewDecision | ''>('');
  const [reason, setReason] = useState('');
  const decide = useAction({
    run: (body: { decision: ReviewDecision; record: string; reason: string }) =>
      call('decideReview', { params: { id: survey.id }, body }),
    done: (_, body) => said[body.decision],
    touches: ['getReview', 'getSurvey', 'listSurveys', 'listEvents'],
  });
  const changed = standing.record !== record || isStatus(decide.error, 412);
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        if (decision) decide.run({ decision, record, reason });
      }}
    >
      <h2>Your decision</h2>
      <p>
        <Link href={`/surveys/${survey.id}/report`}>Make a draft</Link> to see the report as it will be
        printed. {threads ? `${count(threads, 'thread is', 'threads are')} not settled.` : ''}
      </p>
      {changed ? (
        <div className="notice" role="status">
          <p>The record was changed since you opened this page. Read it again before you approve it.</p>
          <Button
            onClick={() => {
              setRecord(standing.record);
              decide.clear();
            }}
          >
            I have read it as it is now
          </Button>
        </div>
      ) : null}
      <RadioGroup
        label="What you decide"
        required
        name="review-decision"
        value={decision}
        options={choices}
        onChange={setDecision}
      />
      {decision ? (
        <TextArea
          label={decision === 'approve' ? 'Remark' : 'What has to be done'}
          optional={decision === 'approve'}
          required={decision === 'send-back'}
          maxLength={4000}
          value={reason}
          onChange={setReason}
          error={fieldError(decide.error, '/reason')}
        />
      ) : null}
      <ErrorNotice error={decide.error} />
      <Button kind="main" type="submit" busy={decide.busy} busyLabel="Recording…">
        Record the decision
      </Button>
    </form>
  );
}
