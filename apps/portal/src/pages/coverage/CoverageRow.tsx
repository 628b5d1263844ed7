import type { CoverageItem } from '@garboard/contract/coverage';
import type { Reached } from '@garboard/trade/coverage';
import { reaches, reachLabels, reachNeedsReason } from '@garboard/trade/coverage';
import { systemLabels } from '@garboard/trade/vocabulary';
import type { KeyboardEvent } from 'react';
import { useEffect, useId } from 'react';
import { flushSync } from 'react-dom';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { useAnswerDraft } from './useAnswerDraft.ts';

/** The letter that gives each answer while a row has the focus. */
export const reachKeys: Readonly<Record<Reached, string>> = {
  examined: 'E',
  partly: 'P',
  'not-reached': 'N',
  'not-fitted': 'F',
};

/** One system: how far it was reached, why not wholly, and from where it was looked at. */
export function CoverageRow({
  surveyId,
  item,
  onUnsaved,
}: {
  surveyId: string;
  item: CoverageItem;
  onUnsaved: (unsaved: boolean) => void;
}) {
  const answer = useAnswerDraft(surveyId, item);
  const { draft, unsaved } = answer;
  const id = useId();
  const name = systemLabels[item.system];
  useEffect(() => onUnsaved(unsaved), [unsaved, onUnsaved]);

  function byLetter(event: KeyboardEvent<HTMLElement>) {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const reached = reaches.find((one) => reachKeys[one] === event.key.toUpperCase());
    if (!reached) return;
    event.preventDefault();
    // Drawn at once: the next key, however soon, belongs to the field that has the focus then.
    flushSync(() => answer.set({ reached }));
    const row = event.currentTarget.closest('tr');
    // The reason is written next; without need of one, the next system is.
    const reason = row?.querySelector('textarea');
    const next = row?.nextElementSibling;
    const radio = next?.querySelector<HTMLInputElement>('input:checked') ?? next?.querySelector('input');
    (reachNeedsReason(reached) ? reason : radio)?.focus();
  }

  return (
    <tr className={item.asked && !draft.reached ? 'unanswered' : undefined}>
      <th scope="row">{name}</th>
      <td data-label="Reached">
        <fieldset className="reach" onKeyDown={byLetter}>
          <legend className="unseen">{name}</legend>
          {reaches.map((reached) => (
            <label key={reached} className="choice">
              <input
                type="radio"
                name={`${id}-reached`}
                checked={draft.reached === reached}
                onChange={() => answer.set({ reached })}
              />
              <span>{reachLabels[reached]}</span>
            </label>
          ))}
        </fieldset>
      </td>
      <td data-label={draft.reached ? 'Remarks' : ''}>
        {draft.reached ? (
          <div className="answer-words">
            <label>
              <span className="small-label">
                {reachNeedsReason(draft.reached) ? 'Why' : 'Remark (optional)'}
                <span className="unseen">, {name}</span>
              </span>
              <textarea
                className="input"
                rows={1}
                maxLength={2000}
                value={draft.reason}
                aria-invalid={answer.wantsReason || undefined}
                onChange={(event) => answer.set({ reason: event.target.value })}
              />
            </label>
            {draft.reached === 'not-fitted' ? null : (
              <label>
                <span className="small-label">
                  Looked at from (optional)<span className="unseen">, {name}</span>
                </span>
                <textarea
                  className="input"
                  rows={1}
                  maxLength={300}
                  value={draft.lookedFrom}
                  onChange={(event) => answer.set({ lookedFrom: event.target.value })}
                />
              </label>
            )}
            <p className="soft" role="status">
              {answer.wantsReason
                ? 'Not saved yet: say why.'
                : answer.saving || (unsaved && !answer.theirs && !answer.error)
                  ? 'Saving…'
                  : ''}
            </p>
          </div>
        ) : null}
        {answer.theirs ? <Disagreement answer={answer} /> : null}
        <ErrorNotice quiet error={answer.error} onRetry={answer.retry} />
      </td>
    </tr>
  );
}

function Disagreement({ answer }: { answer: ReturnType<typeof useAnswerDraft> }) {
  const { theirs } = answer;
  if (!theirs) return null;
  const words = theirs.reached ? reachLabels[theirs.reached] : 'No answer';
  return (
    <div className="notice" role="alert">
      <p>
        Somebody else answered meanwhile: <strong>{words}</strong>
        {theirs.reason ? `, “${theirs.reason}”` : ''}
      </p>
      <div className="actions">
        <Button onClick={() => answer.settle('theirs')}>Take their answer</Button>
        <Button onClick={() => answer.settle('mine')}>Keep mine</Button>
      </div>
    </div>
  );
}
