import type { WebhookKind } from '@garboard/trade/webhook-kinds';
import { useState } from 'react';
import { type CallArgs, call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { type Me, useMe } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { CheckboxGroup, SelectField, TextField } from '../../ui/Field.tsx';
import { roleWords } from '../account/roleWords.ts';
import { kindWords } from './kindWords.ts';

type Body = NonNullable<CallArgs<'createWebhookEndpoint'>['body']>;

/** For whom a system can be told: firms of which one is a principal, and each part one takes in surveys. */
function partsOf(me: Me): Record<string, Pick<Body, 'firmId' | 'role'> & { words: string }> {
  const firms = me.firmRoles
    .filter(({ role }) => role === 'principal')
    .map(({ firm }) => ({ firmId: firm.id, role: 'principal' as const, words: `The firm ${firm.name}` }));
  const parts = me.parties.map(({ firmId, firmName, role }) => ({
    ...{ firmId, role },
    words: `${roleWords[role]}, ${firmName}`,
  }));
  return Object.fromEntries([...firms, ...parts].map((part) => [`${part.firmId} ${part.role}`, part]));
}

/** Adds a system; its secret is handed on, to be shown this once. */
export function AddSystem({ onClose, onMade }: { onClose: () => void; onMade: (secret: string) => void }) {
  const parts = partsOf(useMe());
  const keys = Object.keys(parts);
  const [part, setPart] = useState(keys.length === 1 ? (keys[0] ?? '') : '');
  const [label, setLabel] = useState('');
  const [url, setUrl] = useState('');
  const [kinds, setKinds] = useState<WebhookKind[]>(['report.issued', 'evidence.sent']);
  const add = useAction({
    run: (body: Body) => call('createWebhookEndpoint', { body }),
    touches: ['listWebhookEndpoints'],
    onDone: ({ secret }) => onMade(secret),
  });
  if (keys.length === 0) {
    return (
      <p className="notice">
        A principal adds systems for the firm, a party for itself; you are neither with any firm.
      </p>
    );
  }
  const chosen = parts[part];
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        if (chosen) add.run({ firmId: chosen.firmId, role: chosen.role, label, url, kinds });
      }}
    >
      <h2>Add a system</h2>
      <ErrorNotice error={add.error} />
      <SelectField
        label="For"
        required
        value={part}
        empty="Choose"
        options={Object.fromEntries(keys.map((key) => [key, parts[key]?.words ?? '']))}
        onChange={setPart}
      />
      <TextField
        label="Name of the system"
        required
        maxLength={120}
        value={label}
        onChange={setLabel}
        error={fieldError(add.error, '/label')}
      />
      <TextField
        label="Address"
        hint="Such as https://claims.underwriter.example/garboard"
        type="url"
        required
        value={url}
        onChange={setUrl}
        error={fieldError(add.error, '/url')}
      />
      <CheckboxGroup
        label="Told when"
        values={kinds}
        options={kindWords}
        onChange={setKinds}
        error={fieldError(add.error, '/kinds')}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={add.busy} busyLabel="Adding…">
          Add the system
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
