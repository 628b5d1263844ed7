import type { Finding } from '@garboard/contract/findings';
import { addDays } from '@garboard/trade/due-dates';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError, isStatus } from '../../api/problems.ts';
import { useAction, useWholeList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextArea, TextField } from '../../ui/Field.tsx';
import { formatDay, formatInstant } from '../../ui/format.ts';
import { whoWas } from '../surveys/EventSteps.tsx';

/** Every time that more time was given, with the reason. */
export function Extensions({ finding, timeZone }: { finding: Finding; timeZone: string }) {
  const list = useWholeList('listExtensions', { params: { id: finding.id } });
  if (list.error && !list.data && !isStatus(list.error, 403)) {
    return <ErrorNotice quiet error={list.error} onRetry={() => void list.refetch()} />;
  }
  if (!list.data?.length) return null;
  return (
    <section className="stack">
      <h2>More time given</h2>
      <ol className="steps">
        {list.data.map((one) => (
          <li key={one.id}>
            <p>
              Until <strong>{formatDay(one.dueOn)}</strong>
              {one.from ? ` instead of ${formatDay(one.from)}` : ''}
            </p>
            <p className="text" dir="auto">
              {one.reason}
            </p>
            <p className="soft small">
              {whoWas(one.by)}, {formatInstant(one.at, timeZone)}
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Gives a later last day, with the reason. */
export function GiveTime({ finding }: { finding: Finding }) {
  const [asking, setAsking] = useState(false);
  const [dueOn, setDueOn] = useState('');
  const [reason, setReason] = useState('');
  const extend = useAction({
    run: (body: { dueOn: string; reason: string }, idempotencyKey) =>
      call('extendFinding', { params: { id: finding.id }, body, idempotencyKey }),
    done: (given) => `It is due on ${formatDay(given.dueOn)} now. The parties are told.`,
    touches: ['getFinding', 'listExtensions', 'listFindings', 'listFindingEvents', 'listRecommendations'],
    onDone: () => {
      setAsking(false);
      setDueOn('');
      setReason('');
    },
  });
  return (
    <>
      {' '}
      <Button kind="quiet" onClick={() => setAsking(true)}>
        Give more time
      </Button>
      {asking ? (
        <Dialog title={`More time for finding ${finding.number}`} onClose={() => setAsking(false)}>
          <form
            className="stack"
            onSubmit={(event) => {
              event.preventDefault();
              extend.run({ dueOn, reason });
            }}
          >
            {finding.dueOn ? <p>It is due on {formatDay(finding.dueOn)}.</p> : null}
            <TextField
              label="New last day"
              type="date"
              required
              min={finding.dueOn ? addDays(finding.dueOn, 1) : undefined}
              value={dueOn}
              onChange={setDueOn}
              error={fieldError(extend.error, '/dueOn')}
            />
            <TextArea
              label="Why more time is given"
              hint="The owner and the insurer read it."
              required
              maxLength={2000}
              value={reason}
              onChange={setReason}
              error={fieldError(extend.error, '/reason')}
            />
            <ErrorNotice error={extend.error} />
            <div className="actions">
              <Button onClick={() => setAsking(false)}>Cancel</Button>
              <Button kind="main" type="submit" busy={extend.busy}>
                Set the new day
              </Button>
            </div>
          </form>
        </Dialog>
      ) : null}
    </>
  );
}
