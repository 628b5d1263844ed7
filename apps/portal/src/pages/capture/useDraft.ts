import { useCallback, useEffect, useRef, useState } from 'react';
import { draftKept, keepDraft } from '../../capture/drafts.ts';
import { useOnBoard } from './person.ts';

/**
 * What is being written, kept on the telephone while it is written; it outlives a reload and a crash. Undefined until
 * it is known whether something was being written before. `drop` forgets it.
 */
export function useDraft<T>(key: string, empty: () => T) {
  const { me } = useOnBoard();
  const personId = me.person.id;
  const [value, setValue] = useState<T | undefined>(undefined);
  const begin = useRef(empty);
  useEffect(() => {
    let over = false;
    void draftKept(personId, key).then((kept) => {
      if (!over) setValue((kept as T | null) ?? begin.current());
    });
    return () => {
      over = true;
    };
  }, [personId, key]);
  // Asked for at once with every key, not one after the other: the page may be gone before the last has its turn.
  // The database writes them in the order in which they were asked for.
  const write = useCallback(
    (next: T | null) =>
      // Without room the text still stands in the window; keeping it for good says so.
      keepDraft(personId, key, next).catch(() => undefined),
    [personId, key],
  );
  const set = useCallback(
    (next: T) => {
      setValue(next);
      void write(next);
    },
    [write],
  );
  const drop = useCallback(() => write(null), [write]);
  return { value, set, drop };
}
