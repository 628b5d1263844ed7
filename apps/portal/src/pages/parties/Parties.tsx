import type { Survey } from '@garboard/contract/surveys';
import { partyRoleLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import type { Item } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction, useList } from '../../api/queries.ts';
import { isStaffOf, mayDo } from '../../app/roles.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { MoreList } from '../../ui/MoreList.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { InviteParty } from './InviteParty.tsx';

type Party = Item<'listParties'>;

/** Who the survey is shared with. Staff invite anyone; the owner may invite the yard. */
export default function Parties({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <PartiesOf survey={survey} />}</WithSurvey>;
}

function PartiesOf({ survey }: { survey: Survey }) {
  const list = useList('listParties', { params: { id: survey.id } });
  const [leaving, setLeaving] = useState<Party | null>(null);
  const staff = isStaffOf(survey);
  const release = useAction({
    run: (party: Party) =>
      call('updateParty', {
        params: { id: survey.id, partyId: party.id },
        body: { released: !party.released },
      }),
    done: (party) => (party.released ? `Released to ${party.name}.` : `No longer released to ${party.name}.`),
    touches: ['listParties', 'listEvents'],
  });
  const columns: Column<Party>[] = [
    {
      key: 'name',
      heading: 'Name',
      cell: (party) => (
        <>
          {party.name} <small>{party.email}</small>
        </>
      ),
    },
    { key: 'role', heading: 'As', cell: (party) => partyRoleLabels[party.role] },
    {
      key: 'released',
      heading: 'The report',
      cell: (party) => (party.released ? 'Released to them' : 'Not released to them'),
    },
    {
      key: 'joined',
      heading: 'Invitation',
      cell: (party) => (party.joined ? 'Accepted' : 'Sent, not yet accepted'),
    },
  ];
  if (staff) {
    columns.push({
      key: 'remove',
      heading: 'Access',
      cell: (party) => (
        <div className="actions">
          <Button
            kind="quiet"
            aria-label={`${party.released ? 'Withdraw the release to' : 'Release to'} ${party.name}`}
            onClick={() => release.run(party)}
          >
            {party.released ? 'Withdraw the release' : 'Release'}
          </Button>
          <Button kind="quiet" aria-label={`End access of ${party.name}`} onClick={() => setLeaving(party)}>
            End access
          </Button>
        </div>
      ),
    });
  }
  return (
    <SurveyFrame survey={survey} title="Parties">
      <div className="stack-wide">
        <ErrorNotice error={release.error} />
        <MoreList
          list={list}
          what="the parties"
          empty={
            <EmptyState title="Nobody outside the firm has been invited">
              <p>
                Invite the owner, buyer, broker or insurer. They see what was issued, once it is released to
                them.
              </p>
            </EmptyState>
          }
        >
          {(parties) => (
            <Table
              caption="With whom this survey is shared"
              columns={columns}
              rows={parties}
              rowKey={(party) => party.id}
            />
          )}
        </MoreList>
        {mayDo('party.invite', survey) || mayDo('party.invite-yard', survey) ? (
          <InviteParty survey={survey} yardOnly={!mayDo('party.invite', survey)} />
        ) : null}
      </div>
      {leaving ? <EndAccess surveyId={survey.id} party={leaving} onClose={() => setLeaving(null)} /> : null}
    </SurveyFrame>
  );
}

function EndAccess({ surveyId, party, onClose }: { surveyId: string; party: Party; onClose: () => void }) {
  const remove = useAction({
    run: () => call('removeParty', { params: { id: surveyId, partyId: party.id } }),
    done: `${party.name} no longer has access.`,
    touches: ['listParties', 'listEvents'],
    onDone: onClose,
  });
  return (
    <ConfirmDialog
      title={`End access of ${party.name}?`}
      confirmLabel="End access"
      busy={remove.busy}
      onClose={onClose}
      onConfirm={() => remove.run(undefined)}
    >
      <p>
        They will no longer see this survey here. A report they have already downloaded stays with them, and
        what they did stays in the history.
      </p>
      <ErrorNotice error={remove.error} />
    </ConfirmDialog>
  );
}
