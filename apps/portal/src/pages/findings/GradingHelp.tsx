import {
  type Grading,
  gradingSource,
  probabilityLevels,
  probabilityWords,
  severityCategories,
  severityWords,
  suggestUrgency,
} from '@garboard/trade/grading';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { urgencyText } from '../../ui/UrgencyGauge.tsx';
import type { FindingDraft } from './findingDraft.ts';
import { findingLabels as labels } from './findingDraft.ts';

/** Suggests how soon from severity and probability by the published matrix; what the surveyor chose stands. */
export function GradingHelp({
  draft,
  set,
}: {
  draft: Pick<FindingDraft, 'severity' | 'probability' | 'urgency' | 'withinDays'>;
  set: (change: Partial<FindingDraft>) => void;
}) {
  const { severity, probability } = draft;
  const [open] = useState(severity !== null || probability !== null);
  return (
    <details className="boxed" open={open || undefined}>
      <summary>Help with how soon</summary>
      <SelectField
        label={labels.severity}
        value={severity ? String(severity) : ''}
        options={severityWords as Record<string, string>}
        empty="Not graded"
        onChange={(value) => set({ severity: severityCategories.find((s) => String(s) === value) ?? null })}
      />
      <SelectField
        label={labels.probability}
        hint="As the boat is now, nothing put right."
        value={probability ?? ''}
        options={probabilityWords}
        empty="Not graded"
        onChange={(value) => set({ probability: probabilityLevels.find((p) => p === value) ?? null })}
      />
      {severity && probability ? (
        <Suggested grading={{ severity, probability }} draft={draft} set={set} />
      ) : null}
    </details>
  );
}

function Suggested({
  grading,
  draft,
  set,
}: {
  grading: Grading;
  draft: Pick<FindingDraft, 'urgency' | 'withinDays'>;
  set: (change: Partial<FindingDraft>) => void;
}) {
  const { words, urgency, withinDays } = suggestUrgency(grading);
  const same = draft.urgency === urgency && (withinDays === null || draft.withinDays === String(withinDays));
  return (
    <div role="status">
      <p>
        <strong>{words}.</strong> Suggested: {urgencyText(urgency, withinDays).toLowerCase()}
        {same ? ', as you chose.' : '.'}
      </p>
      {same ? null : (
        <Button onClick={() => set({ urgency, withinDays: withinDays === null ? '' : String(withinDays) })}>
          Use the suggestion
        </Button>
      )}
      <p className="soft small">
        The matrix is that of {gradingSource}; which of our words a risk suggests is our own step. It is only
        a suggestion: your judgement stands.
      </p>
    </div>
  );
}
