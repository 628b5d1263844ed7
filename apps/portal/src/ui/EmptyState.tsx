import type { ReactNode } from 'react';

/** What a list says when it has nothing: why, and what to do about it. */
export function EmptyState({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className="empty">
      <h2>{title}</h2>
      {children}
    </div>
  );
}

/** Shown only when something takes long enough to notice, and told to a screen reader. */
export function Loading({ what }: { what: string }) {
  return (
    <p className="soft" role="status">
      Fetching {what}…
    </p>
  );
}
