import type { Survey } from '@garboard/contract/surveys';
import { releasedByDefault } from '@garboard/trade/permissions';
import type { PartyRole } from '@garboard/trade/vocabulary';
import { partyRoleLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction, useWholeList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Checkbox, SelectField } from '../../ui/Field.tsx';
import { NameAndEmail } from '../../ui/NameAndEmail.tsx';
import { ChooseFindings, toPutRight } from './ChooseFindings.tsx';

/** Invites someone by e-mail; a yard only, when an owner or who pays does it. */
export function InviteParty({ survey, yardOnly }: { survey: Survey; yardOnly: boolean }) {
  const [role, setRole] = useState<PartyRole | ''>(yardOnly ? 'yard' : '');
  const [name, setName] = useState('');
  const [email, setEmail] = useState('');
  const [released, setReleased] = useState(yardOnly);
  const [client, setClient] = useState(false);
  const findings = useWholeList('listFindings', { params: { id: survey.id } }, { enabled: role === 'yard' });
  /** Until somebody chooses: what waits to be put right. */
  const [chosen, setChosen] = useState<string[] | null>(null);
  const findingIds = chosen ?? toPutRight(findings.data ?? []);
  const invite = useAction({
    run: (body: CallArgs<'addParty'>['body'], idempotencyKey) =>
      call('addParty', { params: { id: survey.id }, body, idempotencyKey }),
    done: (party) => `${party.name} invited. An e-mail with a link is on its way.`,
    touches: ['listParties', 'listEvents', 'listDisclosures'],
    onDone: () => {
      setName('');
      setEmail('');
      setChosen(null);
      setClient(false);
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
        if (!role) return;
        const given = role === 'yard' ? { findingIds } : client ? { client } : {};
        invite.run({ role, name, email, ...(yardOnly ? {} : { released }), ...given });
      }}
    >
      <h2>{yardOnly ? 'Invite the yard that does the work' : 'Invite a party'}</h2>
      {yardOnly ? (
        <p>
          The yard sees the findings you give it and may send evidence for them. It doesn’t get the report.
        </p>
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
            setReleased(chosen !== '' && (releasedByDefault.includes(chosen) || client));
            if (chosen === 'yard') setClient(false);
          }}
          error={fieldError(invite.error, '/role')}
        />
      )}
      <NameAndEmail name={name} email={email} onName={setName} onEmail={setEmail} error={invite.error} />
      {role === 'yard' ? (
        <ChooseFindings findings={findings.data ?? []} values={findingIds} onChange={setChosen} />
      ) : null}
      {yardOnly || role === 'yard' || role === '' ? null : (
        <Checkbox
          label="They pay for the survey, and say to whom the report is released"
          checked={client}
          onChange={(pays) => {
            setClient(pays);
            if (pays) setReleased(true);
          }}
        />
      )}
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
