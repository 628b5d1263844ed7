import type { ReviewComment } from '@garboard/contract/reviews';
import type { Survey } from '@garboard/contract/surveys';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextArea } from '../../ui/Field.tsx';
import { count, formatInstant } from '../../ui/format.ts';
import { whoWas } from '../surveys/EventSteps.tsx';

interface Props {
  survey: Survey;
  findingId?: string;
  /** What they are about, such as `finding 3`. */
  about: string;
  comments: readonly ReviewComment[];
  mayComment: boolean;
}

/** Threads of comments: those that are open in full, those that are settled folded up. */
export function Threads({ survey, findingId, about, comments, mayComment }: Props) {
  const threads = comments
    .filter((comment) => !comment.replyTo)
    .map((first) => ({ first, replies: comments.filter((comment) => comment.replyTo === first.id) }));
  const settled = threads.filter(({ first }) => first.settledAt);
  const shared = { survey, mayComment };
  return (
    <div className="stack">
      {threads
        .filter(({ first }) => !first.settledAt)
        .map((thread) => (
          <Thread key={thread.first.id} {...thread} {...shared} />
        ))}
      {settled.length ? (
        <details>
          <summary>{count(settled.length, 'settled thread')}</summary>
          {settled.map((thread) => (
            <Thread key={thread.first.id} {...thread} {...shared} />
          ))}
        </details>
      ) : null}
      {!threads.length && !mayComment ? <p className="soft">No comments.</p> : null}
      {mayComment ? (
        <Write survey={survey} findingId={findingId ?? null} label={`Comment on ${about}`} say="Comment" />
      ) : null}
    </div>
  );
}

function Thread({
  survey,
  first,
  replies,
  mayComment,
}: {
  survey: Survey;
  first: ReviewComment;
  replies: readonly ReviewComment[];
  mayComment: boolean;
}) {
  const settle = useAction({
    run: (settled: boolean) => call('updateReviewComment', { params: { id: first.id }, body: { settled } }),
    done: (_, settled) => (settled ? 'Settled.' : 'Opened again.'),
    touches: ['listReviewComments', 'getReview'],
  });
  const starts = first.text.slice(0, 40);
  return (
    <div className="thread stack">
      <ol className="plain-list">
        {[first, ...replies].map((comment) => (
          <li key={comment.id} className="said">
            <p className="text" dir="auto">
              {comment.text}
            </p>
            <p className="soft small">
              {whoWas(comment.by)}, {formatInstant(comment.at, survey.timeZone)}
            </p>
          </li>
        ))}
      </ol>
      {first.settledAt ? (
        <p className="soft small">
          Settled by {first.settledBy}, {formatInstant(first.settledAt, survey.timeZone)}
        </p>
      ) : null}
      {mayComment ? (
        <>
          {first.settledAt ? null : (
            <Write
              survey={survey}
              findingId={null}
              replyTo={first.id}
              label={`Reply to “${starts}${starts.length < first.text.length ? '…' : ''}”`}
              say="Reply"
            />
          )}
          <Button kind="quiet" busy={settle.busy} onClick={() => settle.run(!first.settledAt)}>
            {first.settledAt ? 'Open it again' : 'Settle this thread'}
          </Button>
        </>
      ) : null}
      <ErrorNotice error={settle.error} />
    </div>
  );
}

/** A box to write in, opened when it is wanted. */
function Write({
  survey,
  findingId,
  replyTo = null,
  label,
  say,
}: {
  survey: Survey;
  findingId: string | null;
  replyTo?: string | null;
  label: string;
  say: string;
}) {
  const [open, setOpen] = useState(false);
  const [text, setText] = useState('');
  const add = useAction({
    run: (written: string, idempotencyKey) =>
      call('addReviewComment', {
        params: { id: survey.id },
        body: { findingId, replyTo, text: written },
        idempotencyKey,
      }),
    done: `${say} added.`,
    touches: ['listReviewComments', 'getReview'],
    onDone: () => {
      setText('');
      setOpen(false);
    },
  });
  if (!open) {
    return (
      <Button kind="quiet" aria-label={label} onClick={() => setOpen(true)}>
        {say}
      </Button>
    );
  }
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        add.run(text);
      }}
    >
      <TextArea
        label={label}
        required
        autoFocus
        maxLength={8000}
        value={text}
        onChange={setText}
        error={fieldError(add.error, '/text')}
      />
      <ErrorNotice error={add.error} />
      <div className="actions">
        <Button type="submit" busy={add.busy} busyLabel="Adding…">
          Add it
        </Button>
        <Button kind="quiet" onClick={() => setOpen(false)}>
          Cancel
        </Button>
      </div>
    </form>
  );
}
