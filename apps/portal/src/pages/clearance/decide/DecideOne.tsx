import type { Decision } from '@garboard/trade/vocabulary';
import type { ReactNode } from 'react';
import { fieldError } from '../../../api/problems.ts';
import { RadioGroup, TextArea, TextField } from '../../../ui/Field.tsx';
import type { Deciding } from './decisionDraft.ts';

export const choices: Record<Decision, string> = {
  accept: 'Accept: it has been put right',
  return: 'Return: something is still missing',
  'accept-as-is': 'Accept as it is: not put right, acceptable within a limit',
};

/** One decision of three, with what it must be given. */
export function DecideOne({
  label,
  hint,
  name,
  value,
  set,
  error,
  pointer = '',
}: {
  label: string;
  hint?: ReactNode;
  name: string;
  value: Deciding;
  set: (next: Deciding) => void;
  error: unknown;
  /** Where it stands in what is sent, such as `/items/0`. */
  pointer?: string;
}) {
  const change = (part: Partial<Deciding>) => set({ ...value, ...part });
  const of = pointer ? `: ${label}` : '';
  return (
    <>
      <RadioGroup
        label={label}
        required
        hint={hint}
        name={name}
        value={value.decision}
        options={choices}
        onChange={(decision) => change({ decision })}
      />
      {value.decision === 'accept-as-is' ? (
        <div className="fields-2">
          <TextField
            label={`The limit within which it is accepted${of}`}
            hint="Such as “inland waters only” or “until the engine is next out”."
            required
            maxLength={1000}
            value={value.limit}
            onChange={(limit) => change({ limit })}
            error={fieldError(error, `${pointer}/limit`)}
          />
          <TextField
            label={`Until${of}`}
            optional
            type="date"
            hint="The finding is open again the day after."
            value={value.limitUntil}
            onChange={(limitUntil) => change({ limitUntil })}
            error={fieldError(error, `${pointer}/limitUntil`)}
          />
        </div>
      ) : null}
      {value.decision ? (
        <TextArea
          label={`${value.decision === 'return' ? 'What is still missing' : 'Remark'}${of}`}
          optional={value.decision !== 'return'}
          required={value.decision === 'return'}
          maxLength={4000}
          value={value.reason}
          onChange={(reason) => change({ reason })}
          error={fieldError(error, `${pointer}/reason`)}
        />
      ) : null}
    </>
  );
}
