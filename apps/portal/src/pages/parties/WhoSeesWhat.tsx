import type { Survey } from '@garboard/contract/surveys';
import type { Action } from '@garboard/trade/permissions';
import { grantFor } from '@garboard/trade/permissions';
import { type PartyRole, partyRoleLabels, partyRoles } from '@garboard/trade/vocabulary';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';

/** What the permission table says of a role and an action, in words. */
function words(role: PartyRole, action: Action, survey: Survey): string {
  const grant = grantFor(action, role);
  if (grant === null) return 'No';
  if (grant === 'assigned') return 'Those it puts right';
  if (grant === 'client') return 'If they pay';
  if (grant === 'decides') return survey.clearanceDecidedBy === 'insurer' ? 'Yes, once released' : 'Not here';
  return grant === 'released' ? 'Once released' : 'Yes';
}

/** What a party sees and does by its role, said by the very table that decides it. */
export function WhoSeesWhat({ survey }: { survey: Survey }) {
  const of = (key: string, heading: string, action: Action): Column<PartyRole> => ({
    key,
    heading,
    cell: (role) => words(role, action, survey),
  });
  return (
    <details className="section">
      <summary>What each party sees and does</summary>
      <Table
        caption="An invited party sees that the survey exists; the rest by its role"
        rows={partyRoles}
        rowKey={(role) => role}
        columns={[
          { key: 'role', heading: 'Role', cell: (role) => partyRoleLabels[role] },
          of('report', 'The report', 'report.read'),
          of('findings', 'Findings and photos', 'finding.read'),
          of('evidence', 'Evidence', 'evidence.read'),
          of('sends', 'Sends evidence', 'evidence.send'),
          of('decides', 'Decides on evidence', 'evidence.decide'),
          of('releases', 'Releases to others', 'party.release'),
        ]}
      />
    </details>
  );
}
