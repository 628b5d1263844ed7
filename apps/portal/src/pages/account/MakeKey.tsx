import type { FirmRole, PartyRole } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { type Me, useMe } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { RadioGroup, SelectField, TextField } from '../../ui/Field.tsx';
import { type Means, PresentPassword } from './PresentPassword.tsx';
import { roleWords } from './roleWords.ts';

interface Part {
  firmId: string;
  role: FirmRole | PartyRole;
  words: string;
}

/** Each role that the person has with each firm, once. */
function partsOf(me: Me): Record<string, Part> {
  const all = [
    ...me.firmRoles.map(({ firm, role }) => ({ firmId: firm.id, firmName: firm.name, role })),
    ...me.parties,
  ];
  return Object.fromEntries(
    all.map(({ firmId, firmName, role }) => [
      `${firmId} ${role}`,
      { firmId, role, words: `${roleWords[role]}, ${firmName}` },
    ]),
  );
}

/** Makes a key; its text is handed on, to be shown this once. */
export function MakeKey({
  means,
  onClose,
  onMade,
}: {
  means: Means;
  onClose: () => void;
  onMade: (key: { name: string; token: string }) => void;
}) {
  const parts = partsOf(useMe());
  const only = Object.keys(parts).length === 1 ? Object.keys(parts)[0] : '';
  const [name, setName] = useState('');
  const [part, setPart] = useState(only ?? '');
  const [access, setAccess] = useState<'read' | 'write'>('read');
  const [expiresOn, setExpiresOn] = useState('');
  const [present, setPresent] = useState('');
  const make = useAction({
    run: (body: CallArgs<'createApiKey'>['body']) => call('createApiKey', { body }),
    touches: ['listApiKeys'],
    onDone: onMade,
  });
  const chosen = parts[part];
  if (!Object.keys(parts).length) {
    return <p className="notice">A key acts in a role, and you have none yet with any firm.</p>;
  }
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        if (!chosen) return;
        make.run({
          ...{ name, firmId: chosen.firmId, role: chosen.role, access, expiresOn: expiresOn || null },
          ...(present ? { currentPassword: present } : {}),
        });
      }}
    >
      <h3>Make a key</h3>
      <ErrorNotice error={make.error} />
      <TextField
        label="What it is for"
        hint="Such as the name of the program; you will know the key by it."
        required
        maxLength={80}
        value={name}
        onChange={setName}
        error={fieldError(make.error, '/name')}
      />
      <SelectField
        label="Acts as"
        required
        value={part}
        empty="Choose a role"
        options={Object.fromEntries(Object.entries(parts).map(([key, { words }]) => [key, words]))}
        onChange={setPart}
      />
      <RadioGroup
        label="May"
        name="access"
        value={access}
        options={{ read: 'Read', write: 'Read and write' }}
        onChange={setAccess}
      />
      <TextField
        label="Works until"
        optional
        hint="The last day; without one it has no end."
        type="date"
        short
        value={expiresOn}
        onChange={setExpiresOn}
        error={fieldError(make.error, '/expiresOn')}
      />
      <PresentPassword
        means={means}
        needed={!means.fresh}
        value={present}
        onChange={setPresent}
        error={make.error}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={make.busy} busyLabel="Making…">
          Make the key
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
