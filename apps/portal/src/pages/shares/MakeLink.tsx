import { longestShareDays, shortestPasscode } from '@garboard/contract/limits';
import { useState } from 'react';
import type { Answer, CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';

/** For whom, how long, and how closely it is kept. */
export function MakeLink({
  reportId,
  onClose,
  onMade,
}: {
  reportId: string;
  onClose: () => void;
  onMade: (link: Answer<'createShareLink'>) => void;
}) {
  const [label, setLabel] = useState('');
  const [days, setDays] = useState('14');
  const [passcode, setPasscode] = useState('');
  const [viewLimit, setViewLimit] = useState('');
  const make = useAction({
    run: (body: CallArgs<'createShareLink'>['body']) =>
      call('createShareLink', { params: { id: reportId }, body }),
    touches: ['listShareLinks', 'listEvents'],
    onDone: onMade,
  });
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        make.run({
          label,
          days: Number(days),
          passcode: passcode || null,
          viewLimit: viewLimit ? Number(viewLimit) : null,
        });
      }}
    >
      <h3>Make a link</h3>
      <ErrorNotice error={make.error} />
      <TextField
        label="For whom"
        hint="Only you and the firm read this."
        required
        maxLength={120}
        value={label}
        onChange={setLabel}
        error={fieldError(make.error, '/label')}
      />
      <div className="fields-2">
        <TextField
          label="Works for how many days"
          hint={`${longestShareDays} at most.`}
          type="number"
          required
          short
          min={1}
          max={longestShareDays}
          value={days}
          onChange={setDays}
          error={fieldError(make.error, '/days')}
        />
        <TextField
          label="Opens how many times"
          optional
          hint="Without a number, as often as wanted."
          type="number"
          short
          min={1}
          max={1000}
          value={viewLimit}
          onChange={setViewLimit}
          error={fieldError(make.error, '/viewLimit')}
        />
      </div>
      <TextField
        label="Passcode"
        optional
        hint={`${shortestPasscode} characters or more. Give it by another way than the link, such as the telephone.`}
        autoComplete="off"
        minLength={shortestPasscode}
        maxLength={100}
        value={passcode}
        onChange={setPasscode}
        error={fieldError(make.error, '/passcode')}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={make.busy} busyLabel="Making…">
          Make the link
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
