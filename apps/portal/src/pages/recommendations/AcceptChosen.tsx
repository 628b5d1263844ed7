import { useState } from 'react';
import type { Answer, Item } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextArea } from '../../ui/Field.tsx';
import { count } from '../../ui/format.ts';

type Recommendation = Item<'listRecommendations'>;
type Decided = Answer<'decideRecommendations'>;

/** The interface takes so many at a time. */
const atOnce = 100;

async function acceptAll(chosen: readonly Recommendation[], reason: string): Promise<Decided> {
  const ids = chosen.flatMap((item) => item.evidence?.clearanceId ?? []);
  const all: Decided = { done: [], refused: [] };
  for (let from = 0; from < ids.length; from += atOnce) {
    const clearanceIds = ids.slice(from, from + atOnce);
    const part = await call('decideRecommendations', { body: { clearanceIds, decision: 'accept', reason } });
    all.done.push(...part.done);
    all.refused.push(...part.refused);
  }
  return all;
}

/** Accepts the evidence of several recommendations with one reason, and says which were not accepted and why. */
export function AcceptChosen({
  chosen,
  onDone,
  onClose,
}: {
  chosen: readonly Recommendation[];
  /** They are decided, or can't be: nothing stays chosen. */
  onDone: () => void;
  onClose: () => void;
}) {
  const [reason, setReason] = useState('');
  const [told, setTold] = useState<Decided | null>(null);
  const accept = useAction({
    run: (words: string) => acceptAll(chosen, words),
    done: ({ done }) => `${count(done.length, 'recommendation')} accepted.`,
    touches: ['listRecommendations', 'getFinding', 'listClearances', 'getSurvey', 'listSurveys'],
    onDone: (answer) => {
      onDone();
      if (answer.refused.length) setTold(answer);
      else onClose();
    },
  });
  // What was chosen when it was asked for; afterwards the page has chosen nothing.
  const [named] = useState(() => new Map(chosen.map((item) => [item.evidence?.clearanceId, item])));
  if (told) {
    return (
      <Dialog title="Not all of them were accepted" onClose={onClose}>
        <p>
          {count(told.done.length, 'recommendation')} accepted. {told.refused.length} not:
        </p>
        <ul className="chosen-list">
          {told.refused.map(({ clearanceId, detail }) => {
            const item = named.get(clearanceId);
            return (
              <li key={clearanceId}>
                {item ? `${item.vesselName}: ${item.title}. ` : ''}
                {detail}
              </li>
            );
          })}
        </ul>
        <div className="actions">
          <Button kind="main" onClick={onClose}>
            Close
          </Button>
        </div>
      </Dialog>
    );
  }
  return (
    <Dialog title={`Accept the evidence for ${count(chosen.length, 'recommendation')}`} onClose={onClose}>
      <ul className="chosen-list">
        {chosen.map((item) => (
          <li key={item.id}>
            {item.vesselName}: {item.title}
          </li>
        ))}
      </ul>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          accept.run(reason);
        }}
      >
        <TextArea
          label="Reason"
          hint="Why the evidence is enough. It stands in the record of each of them."
          value={reason}
          onChange={setReason}
          required
          maxLength={4000}
          autoFocus
        />
        {accept.error ? <ErrorNotice error={accept.error} /> : null}
        <div className="actions">
          <Button kind="main" type="submit" busy={accept.busy} busyLabel="Accepting…">
            Accept {chosen.length === 1 ? 'it' : `all ${chosen.length}`}
          </Button>
          <Button onClick={onClose}>Cancel</Button>
        </div>
      </form>
    </Dialog>
  );
}
