import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { findingStateLabels } from '@garboard/trade/vocabulary';
import { writtenDay } from './format.ts';

/** What a finding asks for one by one; with how each stands once the first of them has moved on. */
export function Items({ items }: Pick<SnapshotFinding, 'items'>) {
  if (items.length === 0) return null;
  const moved = items.some((item) => item.state !== 'open');
  return (
    <ol className="items">
      {items.map((item) => (
        <li key={item.id} dir="auto">
          {item.text}
          {moved && <span className="state">{itemWords(item)}</span>}
        </li>
      ))}
    </ol>
  );
}

function itemWords({ state, limit, limitUntil }: SnapshotFinding['items'][number]): string {
  if (state !== 'accepted-as-is') return findingStateLabels[state];
  return `${findingStateLabels[state]}, ${limitWords(limit ?? '', limitUntil)}`;
}

/** Within what, and until when, something was accepted as it is. */
export function limitWords(limit: string, until: string | null): string {
  return until === null
    ? `within this limit: ${limit}`
    : `until ${writtenDay(until)}, within this limit: ${limit}`;
}
