import type { ReactNode } from 'react';
import { Button } from './Button.tsx';
import { Loading } from './EmptyState.tsx';
import { ErrorNotice } from './ErrorNotice.tsx';

/** A list in its four conditions: on its way, refused, empty, and there with perhaps more to fetch. */
export function MoreList<T>({
  list,
  what,
  empty,
  children,
}: {
  list: {
    items: T[] | undefined;
    error: unknown;
    hasMore: boolean;
    fetchingMore: boolean;
    more: () => void;
    retry: () => void;
  };
  what: string;
  empty: ReactNode;
  children: (items: T[]) => ReactNode;
}) {
  if (!list.items) {
    return list.error ? (
      <ErrorNotice quiet error={list.error} onRetry={list.retry} />
    ) : (
      <Loading what={what} />
    );
  }
  if (!list.items.length) return empty;
  return (
    <div className="stack">
      {children(list.items)}
      {list.error ? <ErrorNotice quiet error={list.error} onRetry={list.retry} /> : null}
      {list.hasMore ? (
        <Button busy={list.fetchingMore} busyLabel="Fetching more…" onClick={list.more}>
          Show more
        </Button>
      ) : null}
    </div>
  );
}
