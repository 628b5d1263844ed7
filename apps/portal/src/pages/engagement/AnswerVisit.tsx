import type { VisitView } from '@garboard/contract/visits';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';

/** Confirms or declines a visit that one is asked to. */
export function AnswerVisit({ visit, when }: { visit: VisitView; when: string }) {
  const mine = visit.asks.find((ask) => ask.mine);
  const [note, setNote] = useState(mine?.note ?? '');
  const answer = useAction({
    run: (body: { answer: 'confirmed' | 'declined'; note: string }) =>
      call('answerVisit', { params: { id: visit.id }, body }),
    done: (_, { answer: said }) =>
      said === 'confirmed' ? 'Confirmed. The firm is told.' : 'Declined. The firm is told.',
    touches: ['listVisits'],
  });
  return (
    <form className="stack measure section" onSubmit={(event) => event.preventDefault()}>
      <h3>
        Can it be done? {when}, {visit.place}
      </h3>
      <ErrorNotice error={answer.error} />
      <TextField
        label="What the firm should know"
        optional
        maxLength={1_000}
        value={note}
        onChange={setNote}
      />
      <div className="actions">
        <Button
          kind={mine?.answer === 'asked' ? 'main' : 'plain'}
          busy={answer.busy}
          onClick={() => answer.run({ answer: 'confirmed', note })}
        >
          Confirm
        </Button>
        <Button busy={answer.busy} onClick={() => answer.run({ answer: 'declined', note })}>
          Decline
        </Button>
      </div>
    </form>
  );
}
