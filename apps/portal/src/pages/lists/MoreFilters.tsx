import type { ReactNode } from 'react';

/** Filters that are seldom needed, folded away unless one of them is set. */
export function MoreFilters({ set, children }: { set: boolean; children: ReactNode }) {
  return (
    <details className="more-filters" open={set}>
      <summary>More filters</summary>
      <div className="filters">{children}</div>
    </details>
  );
}
