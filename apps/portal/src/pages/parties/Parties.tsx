import type { Survey } from '@garboard/contract/surveys';
import { partyRoleLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction, useAnswer, useList } from '../../api/queries.ts';
import { isStaffOf, mayDo } from '../../app/roles.ts';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count, formatInstantDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { Disclosures } from './Disclosures.tsx';
import { InviteParty } from './InviteParty.tsx';
import { type Party, PartyActions, usePartyChange } from './PartyActions.tsx';
import { WhoSeesWhat } from './WhoSeesWhat.tsx';
import { YardFindings } from './YardFindings.tsx';

/**
 * Who the survey is shared with. Staff invite anyone and say who pays; who pays says to whom it is released; the owner
 * may invite the yard and say what it puts right.
 */
export default function Parties({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <PartiesOf survey={survey} />}</WithSurvey>;
}

/** What a party has been given, in words. */
function Given({ survey, party }: { survey: Survey; party: Party }) {
  const opened = party.viewedAt ? formatInstantDay(party.viewedAt, survey.timeZone) : null;
  const given = party.findingIds.length;
  return (
    <>
      {party.released ? 'Released to them' : 'Not released to them'}
      {party.role === 'yard' ? (
        <small>
          {given ? `Puts right ${count(given, 'finding')}` : 'Has been given no finding, so it sees none'}
        </small>
      ) : null}
      {opened ? <small>Last opened on {opened}</small> : null}
    </>
  );
}

function PartiesOf({ survey }: { survey: Survey }) {
  const list = useList('listParties', { params: { id: survey.id } });
  const me = useAnswer('getMe', {});
  const [leaving, setLeaving] = useState<Party | null>(null);
  const [giving, setGiving] = useState<Party | null>(null);
  const change = usePartyChange(survey);
  const mine = (party: Party) => me.data?.person.email === party.email;
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
    {
      key: 'role',
      heading: 'As',
      cell: (party) => (
        <>
          {partyRoleLabels[party.role]}
          {party.client ? <small>Pays for the survey</small> : null}
        </>
      ),
    },
    { key: 'released', heading: 'What was issued', cell: (party) => <Given survey={survey} party={party} /> },
    {
      key: 'joined',
      heading: 'Invitation',
      cell: (party) => (
        <>
          {party.joined ? 'Accepted' : 'Sent, not yet accepted'}
          {party.mailRefused ? <small>Mail to this address is refused: is it right?</small> : null}
        </>
      ),
    },
    {
      key: 'access',
      heading: 'Access',
      cell: (party) => (
        <PartyActions
          survey={survey}
          party={party}
          mine={mine(party)}
          change={change}
          onFindings={() => setGiving(party)}
          onLeaving={() => setLeaving(party)}
        />
      ),
    },
  ];
  return (
    <SurveyFrame survey={survey} title="Parties">
      <div className="stack-wide">
        {survey.held ? <Held staff={isStaffOf(survey)} /> : null}
        {survey.client && !isStaffOf(survey) ? (
          <p className="measure">
            You pay for this survey, so the report is yours: you say to whom it is released, and you can
            withdraw that. What somebody has already downloaded stays with them.
          </p>
        ) : null}
        <ErrorNotice error={change.error} />
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
        <WhoSeesWhat survey={survey} />
        {mayDo('party.invite', survey) || mayDo('party.invite-yard', survey) ? (
          <InviteParty survey={survey} yardOnly={!mayDo('party.invite', survey)} />
        ) : null}
        {mayDo('party.release', survey) ? <Disclosures survey={survey} /> : null}
      </div>
      {giving ? <YardFindings survey={survey} yard={giving} onClose={() => setGiving(null)} /> : null}
      {leaving ? <EndAccess surveyId={survey.id} party={leaving} onClose={() => setLeaving(null)} /> : null}
    </SurveyFrame>
  );
}

function Held({ staff }: { staff: boolean }) {
  return (
    <p className="notice measure">
      {staff
        ? 'What was issued is withheld from every party, whatever is said below, until it is paid for or a principal gives the word.'
        : 'What was issued is withheld until it is paid for or the firm gives the word. What you say here takes effect then.'}
    </p>
  );
}

function EndAccess({ surveyId, party, onClose }: { surveyId: string; party: Party; onClose: () => void }) {
  const remove = useAction({
    run: () => call('removeParty', { params: { id: surveyId, partyId: party.id } }),
    done: `${party.name} no longer has access.`,
    touches: ['listParties', 'listEvents', 'listDisclosures'],
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
