import type { Survey } from '@garboard/contract/surveys';
import type { Item } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { isStaffOf, mayDo } from '../../app/roles.ts';
import { Button } from '../../ui/Button.tsx';

export type Party = Item<'listParties'>;

/** Releases to a party or withdraws that, and says who pays. */
export function usePartyChange(survey: Survey) {
  return useAction({
    run: ({ party, ...body }: { party: Party; released?: boolean; client?: boolean }) =>
      call('updateParty', { params: { id: survey.id, partyId: party.id }, body }),
    done: (party, input) => {
      if (input.client === true) return `${party.name} pays, and says to whom the report is released.`;
      if (input.client === false) return `${party.name} no longer says to whom the report is released.`;
      return party.released ? `Released to ${party.name}.` : `No longer released to ${party.name}.`;
    },
    touches: ['listParties', 'listEvents', 'listDisclosures'],
  });
}

/** What the person may do about one party: each button says it of whom. */
export function PartyActions({
  survey,
  party,
  mine,
  change,
  onFindings,
  onLeaving,
}: {
  survey: Survey;
  party: Party;
  /** Whether it is the person themselves. */
  mine: boolean;
  change: ReturnType<typeof usePartyChange>;
  onFindings: () => void;
  onLeaving: () => void;
}) {
  const staff = isStaffOf(survey);
  const yard = party.role === 'yard';
  return (
    <div className="actions">
      {mayDo('party.release', survey) && (staff || !mine) ? (
        <Button
          kind="quiet"
          aria-label={`${party.released ? 'Withdraw the release to' : 'Release to'} ${party.name}`}
          onClick={() => change.run({ party, released: !party.released })}
        >
          {party.released ? 'Withdraw the release' : 'Release'}
        </Button>
      ) : null}
      {yard && mayDo('finding.assign-yard', survey) ? (
        <Button kind="quiet" aria-label={`Findings of ${party.name}`} onClick={onFindings}>
          Findings…
        </Button>
      ) : null}
      {staff && !yard ? (
        <Button
          kind="quiet"
          aria-label={party.client ? `${party.name} doesn’t pay` : `${party.name} pays for it`}
          onClick={() => change.run({ party, client: !party.client })}
        >
          {party.client ? 'Doesn’t pay' : 'Pays for it'}
        </Button>
      ) : null}
      {staff ? (
        <Button kind="quiet" aria-label={`End access of ${party.name}`} onClick={onLeaving}>
          End access
        </Button>
      ) : null}
    </div>
  );
}
