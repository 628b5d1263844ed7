import type { Clearance } from '@garboard/contract/clearances';
import type { Decision } from '@garboard/trade/vocabulary';
import { formatDay, formatInstant } from '../../../ui/format.ts';
import { whoWas } from '../../surveys/EventSteps.tsx';

const reasonWords: Record<Decision, string> = {
  accept: 'Remark: ',
  return: 'Returned because: ',
  'accept-as-is': 'Remark: ',
};
const decidedWords: Record<Decision, string> = {
  accept: 'accepted',
  return: 'returned',
  'accept-as-is': 'accepted as it is',
};

type Said = Pick<Clearance, 'decision' | 'reason' | 'limit' | 'limitUntil'>;

/** What was decided on evidence, by whom and when; item by item where it was so decided. */
export function Decided({ clearance, timeZone }: { clearance: Clearance; timeZone: string }) {
  const { decidedBy, decidedAt } = clearance;
  if (!decidedBy || !decidedAt) return null;
  const apart = clearance.decision === null ? clearance.items.filter((item) => item.decision) : [];
  return (
    <div>
      <Reasons said={clearance} />
      {apart.length ? (
        <ul className="bullets">
          {apart.map((item) => (
            <li key={item.itemId}>
              {item.text}: <strong>{item.decision ? decidedWords[item.decision] : ''}</strong>
              <Reasons said={item} />
            </li>
          ))}
        </ul>
      ) : null}
      <p className="soft small">
        Decided by {whoWas(decidedBy)}, {formatInstant(decidedAt, timeZone)}
      </p>
    </div>
  );
}

function Reasons({ said }: { said: Said }) {
  return (
    <>
      {said.limit ? (
        <p className="text" dir="auto">
          <strong>Limit: </strong>
          {limitWords(said.limit, said.limitUntil)}
        </p>
      ) : null}
      {said.reason ? (
        <p className="text" dir="auto">
          <strong>{said.decision ? reasonWords[said.decision] : ''}</strong>
          {said.reason}
        </p>
      ) : null}
    </>
  );
}

/** A limit with its last day. */
export function limitWords(limit: string, until: string | null): string {
  return until ? `${limit}, until ${formatDay(until)}` : limit;
}
