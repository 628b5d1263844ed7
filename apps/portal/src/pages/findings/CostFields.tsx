import { costBasisLabels } from '@garboard/trade/costs';
import { useState } from 'react';
import { fieldError } from '../../api/problems.ts';
import { RadioGroup, TextField } from '../../ui/Field.tsx';
import { type CostDraft, costProblem } from './costDraft.ts';

const lastCurrency = 'last-currency';

/** What putting it right may cost: a range, on what it rests, and a note. */
export function CostFields({
  cost,
  onChange,
  currency,
  printed,
  error,
}: {
  cost: CostDraft;
  onChange: (cost: CostDraft) => void;
  /** That of the survey's other findings. */
  currency: string | undefined;
  printed: boolean;
  error: unknown;
}) {
  const set = (change: Partial<CostDraft>) => {
    const next = { ...cost, ...change };
    const usual = currency ?? localStorage.getItem(lastCurrency) ?? '';
    onChange(next.currency || !(change.low || change.high) ? next : { ...next, currency: usual });
    if (change.currency?.length === 3) localStorage.setItem(lastCurrency, change.currency);
  };
  const given = cost.low !== '' || cost.high !== '';
  // Open from the start or by hand: it must not close under the hand that empties a field.
  const [open] = useState(given);
  return (
    <details className="boxed" open={open || undefined}>
      <summary>Cost to put right (optional)</summary>
      <p className="soft small">
        {printed
          ? 'Printed in the report and shown to those who may read it, with what it rests on.'
          : 'Seen by your firm only; the survey’s particulars say whether costs are printed.'}
      </p>
      <div className="slot-fields">
        <TextField
          label="From"
          inputMode="decimal"
          autoComplete="off"
          value={cost.low}
          onChange={(low) => set({ low })}
          error={fieldError(error, '/cost/low')}
        />
        <TextField
          label="To"
          inputMode="decimal"
          autoComplete="off"
          value={cost.high}
          onChange={(high) => set({ high })}
          error={fieldError(error, '/cost/high')}
        />
        <TextField
          label="Currency"
          autoComplete="off"
          autoCapitalize="characters"
          maxLength={3}
          value={cost.currency}
          onChange={(code) => set({ currency: code.toUpperCase() })}
          error={fieldError(error, '/cost/currency')}
        />
      </div>
      {given ? <p className="field-error">{costProblem(cost)}</p> : null}
      <RadioGroup
        label="It rests on"
        name="cost-basis"
        value={cost.basis}
        options={costBasisLabels}
        onChange={(basis) => set({ basis })}
      />
      <TextField
        label="Note on the cost"
        optional
        hint="Such as whose quotation, of which day, and what it leaves out."
        maxLength={500}
        value={cost.note}
        onChange={(note) => set({ note })}
        error={fieldError(error, '/cost/note')}
      />
    </details>
  );
}
