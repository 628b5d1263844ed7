import type { FirmRole } from '@garboard/trade/vocabulary';
import { firmRoleLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { NameAndEmail } from '../../ui/NameAndEmail.tsx';

/** Invites someone to work for the firm. */
export function AddColleague({ firmId }: { firmId: string }) {
  const [role, setRole] = useState<FirmRole | ''>('');
  const [name, setName] = useState('');
  const [email, setEmail] = useState('');
  const [qualifications, setQualifications] = useState('');
  const add = useAction({
    run: (body: CallArgs<'addMember'>['body'], idempotencyKey) =>
      call('addMember', { params: { id: firmId }, body, idempotencyKey }),
    done: (person) => `${person.name} invited. An e-mail with a link is on its way.`,
    touches: ['listMembers'],
    onDone: () => {
      setRole('');
      setName('');
      setEmail('');
      setQualifications('');
    },
  });
  return (
    <form
      className="stack measure section"
      onSubmit={(event) => {
        event.preventDefault();
        if (role) add.run({ role, name, email, qualifications });
      }}
    >
      <h2>Invite a colleague</h2>
      <ErrorNotice error={add.error} />
      <SelectField
        label="As"
        required
        value={role}
        options={firmRoleLabels}
        empty="Choose the role"
        onChange={setRole}
      />
      <NameAndEmail name={name} email={email} onName={setName} onEmail={setEmail} error={add.error} />
      <TextField
        label="Qualifications"
        optional
        hint="As they should stand under the signature."
        maxLength={200}
        value={qualifications}
        onChange={setQualifications}
        error={fieldError(add.error, '/qualifications')}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={add.busy} busyLabel="Inviting…">
          Send the invitation
        </Button>
      </div>
    </form>
  );
}
