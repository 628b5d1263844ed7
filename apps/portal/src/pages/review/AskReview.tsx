import type { Survey } from '@garboard/contract/surveys';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction, useWholeList } from '../../api/queries.ts';
import { useMe } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { SelectField, TextArea } from '../../ui/Field.tsx';

/** Asks a second surveyor of the firm to look the record through. */
export function AskReview({ survey }: { survey: Survey }) {
  const me = useMe().person.id;
  const members = useWholeList('listMembers', { params: { id: survey.firmId } });
  const [reviewerId, setReviewer] = useState('');
  const [note, setNote] = useState('');
  const others = Object.fromEntries(
    (members.data ?? [])
      .filter(({ id, role }) => role !== 'office' && id !== me && id !== survey.surveyorId)
      .map(({ id, name }) => [id, name]),
  );
  const ask = useAction({
    run: (body: { reviewerId: string | null; note: string }, idempotencyKey) =>
      call('askReview', { params: { id: survey.id }, body, idempotencyKey }),
    done: 'The review is asked for.',
    touches: ['getReview', 'getSurvey', 'listSurveys', 'listEvents'],
  });
  const nobody = members.data && Object.keys(others).length === 0;
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        ask.run({ reviewerId: reviewerId || null, note });
      }}
    >
      <h2>Ask for a review</h2>
      {nobody ? (
        <p>
          Nobody in your firm could do it: a reviewer is a surveyor or principal other than who signs the
          report and who asks.
        </p>
      ) : (
        <>
          <SelectField
            label="Whom to ask"
            optional
            hint="Told by mail. Any other surveyor of the firm may decide as well."
            value={reviewerId}
            options={others}
            empty="Any surveyor of the firm"
            onChange={setReviewer}
            error={fieldError(ask.error, '/reviewerId')}
          />
          <TextArea
            label="What to look at"
            optional
            maxLength={4000}
            value={note}
            onChange={setNote}
            error={fieldError(ask.error, '/note')}
          />
          <ErrorNotice error={ask.error} />
          <Button kind="main" type="submit" busy={ask.busy} busyLabel="Asking…">
            Ask for the review
          </Button>
        </>
      )}
    </form>
  );
}
