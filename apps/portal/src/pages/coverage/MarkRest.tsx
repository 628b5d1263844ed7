import { etagOf } from '@garboard/contract/client';
import type { Coverage } from '@garboard/contract/coverage';
import { reachLabels } from '@garboard/trade/coverage';
import { systemLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count } from '../../ui/format.ts';

/** Says of every system still unanswered that it was examined, once the person has read which they are. */
export function MarkRest({ surveyId, coverage }: { surveyId: string; coverage: Coverage }) {
  const [asking, setAsking] = useState(false);
  const rest = coverage.items.filter((item) => coverage.unanswered.includes(item.system));
  const mark = useAction({
    run: async (_: undefined) => {
      let marked = 0;
      for (const item of rest) {
        try {
          await call('answerCoverage', {
            params: { id: surveyId, system: item.system },
            body: { reached: 'examined' },
            ifMatch: etagOf(item),
          });
          marked += 1;
        } catch (error) {
          // Answered by somebody else meanwhile: theirs stands.
          if (!isStatus(error, 412)) throw error;
        }
      }
      return marked;
    },
    done: (marked) => `${count(marked, 'system')} marked as examined.`,
    touches: ['getCoverage', 'listEvents'],
    onDone: () => setAsking(false),
  });
  if (!rest.length) return null;
  return (
    <>
      <Button onClick={() => setAsking(true)}>Mark the rest as examined</Button>
      {asking ? (
        <ConfirmDialog
          title={`Mark ${count(rest.length, 'system')} as examined?`}
          confirmLabel={`Yes, I examined ${rest.length === 1 ? 'it' : 'all of these'}`}
          busy={mark.busy}
          onClose={() => setAsking(false)}
          onConfirm={() => mark.run(undefined)}
        >
          <p>
            The report will say of each that it was {reachLabels.examined.toLowerCase()}. People rely on that
            when they buy, insure or use the boat.
          </p>
          <ul className="bullets">
            {rest.map(({ system }) => (
              <li key={system}>{systemLabels[system]}</li>
            ))}
          </ul>
          <ErrorNotice error={mark.error} />
        </ConfirmDialog>
      ) : null}
    </>
  );
}
