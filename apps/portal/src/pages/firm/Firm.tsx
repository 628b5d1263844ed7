import { firmRoleLabels } from '@garboard/trade/vocabulary';
import { useAnswer, useList } from '../../api/queries.ts';
import { useMe } from '../../app/session.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { Table } from '../../ui/Table.tsx';
import { AddColleague } from './AddColleague.tsx';
import { DueDates } from './DueDates.tsx';
import { FirmArchive } from './FirmArchive.tsx';
import { FirmDetails } from './FirmDetails.tsx';
import { FirmRates } from './FirmRates.tsx';
import { FirmTerms } from './FirmTerms.tsx';
import { SigningKey } from './SigningKey.tsx';

/** The firm as it appears on its documents, and the people who work for it. */
export default function Firm() {
  const mine = useMe().firmRoles[0];
  const id = mine?.firm.id ?? '';
  const firm = useAnswer('getFirm', { params: { id } });
  const members = useList('listMembers', { params: { id } });
  const principal = mine?.role === 'principal';
  if (!firm.data) {
    return firm.error ? (
      <ErrorNotice error={firm.error} onRetry={() => void firm.refetch()} />
    ) : (
      <Loading what="the firm" />
    );
  }
  return (
    <Page title={firm.data.name} over="Firm">
      <div className="stack-wide">
        <FirmDetails firm={firm.data} editable={principal} />
        <DueDates firm={firm.data} editable={principal} />
        <FirmRates firmId={id} editable={principal} />
        <FirmTerms firmId={id} editable={principal} />
        <SigningKey firmId={id} editable={principal} />
        <section className="stack">
          <h2>People</h2>
          <MoreList list={members} what="the people" empty={<p>Nobody yet.</p>}>
            {(people) => (
              <Table
                caption="Who works for the firm"
                rows={people}
                rowKey={(person) => person.id}
                columns={[
                  {
                    key: 'name',
                    heading: 'Name',
                    cell: (person) => (
                      <>
                        {person.name} <small>{person.qualifications}</small>
                      </>
                    ),
                  },
                  { key: 'role', heading: 'As', cell: (person) => firmRoleLabels[person.role] },
                  { key: 'email', heading: 'E-mail', cell: (person) => person.email },
                  {
                    key: 'joined',
                    heading: 'Invitation',
                    cell: (person) => (person.joined ? 'Accepted' : 'Sent, not yet accepted'),
                  },
                ]}
              />
            )}
          </MoreList>
        </section>
        {principal ? <AddColleague firmId={id} /> : null}
        {principal ? <FirmArchive firmId={id} /> : null}
      </div>
    </Page>
  );
}
