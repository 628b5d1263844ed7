import type { Survey } from '@garboard/contract/surveys';
import { releasedByDefault } from '@garboard/trade/permissions';
import type { PartyRole } from '@garboard/trade/vocabulary';
import { partyRoleLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Checkbox, SelectField } from '../../ui/Field.tsx';
import { NameAndEmail } from '../../ui/NameAndEmail.tsx';

/** Invites someone by e-mail; a yard only, when an owner does it. */
export function InviteParty({ survey, yardOnly }: { survey: Survey; yardOnly: boolean }) {
  const [role, setRole] = useState<PartyRole | ''>(yardOnly ? 'yard' : '');
  const [name, setName] = useState('');
  const [email, setEmail] = useState('');
  const [released, setReleased] = useState(yardOnly);
  const invite = useAction({
    run: (body: CallArgs<'addParty'>['body'], idempotencyKey) =>
      call('addParty', { params: { id: survey.id }, body, idempotencyKey }),
    done: (party) => `${party.name} invited. An e-mail with a link is on its way.`,
    touches: ['listParties', 'listEvents'],
    onDone: () => {
      setName('');
      setEmail('');
      if (yardOnly) return;
      setRole('');
      setReleased(false);
    },
  });
  return (
    <form
      className="stack measure section"
      onSubmit={(event) => {
        event.preventDefault();
        if (role) invite.run({ role, name, email, ...(yardOnly ? {} : { released }) });
      }}
    >
      <h2>{yardOnly ? 'Invite the yard that does the work' : 'Invite a party'}</h2>
      {yardOnly ? (
        <p>The yard sees the findings and may send evidence for them. It doesn't get the report itself.</p>
      ) : null}
      <ErrorNotice error={invite.error} />
      {yardOnly ? null : (
        <SelectField
          label="As"
          required
          value={role}
          options={partyRoleLabels}
          empty="Choose the role"
          onChange={(chosen) => {
            setRole(chosen);
            setReleased(chosen !== '' && releasedByDefault.includes(chosen));
          }}
          error={fieldError(invite.error, '/role')}
        />
      )}
      <NameAndEmail name={name} email={email} onName={setName} onEmail={setEmail} error={invite.error} />
      {yardOnly ? null : (
        <Checkbox label="Release to them what is issued" checked={released} onChange={setReleased} />
      )}
      <div className="actions">
        <Button kind="main" type="submit" busy={invite.busy} busyLabel="Inviting…">
          Send the invitation
        </Button>
      </div>
    </form>
  );
}
