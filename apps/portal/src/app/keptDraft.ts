import { useCallback, useEffect, useRef, useState } from 'react';
import { draftKept, keepDraft } from '../capture/drafts.ts';

/**
 * What a person is writing, kept on the device while it is written; it outlives a reload and a crash. The value is
 * undefined until it is known whether something was being written before. `change` begins from what is written by
 * then, `drop` forgets what is kept and leaves what stands in the window.
 */
export function useKeptDraft<T>(personId: string, key: string, empty: () => T) {
  const [value, setValue] = useState<T | undefined>(undefined);
  /** False when this device gives no room, or keeps nothing at all: then it is only in the window. */
  const [safe, setSafe] = useState(true);
  const begin = useRef(empty);
  const now = useRef<T | undefined>(undefined);
  const show = useCallback((next: T) => {
    now.current = next;
    setValue(next);
  }, []);
  useEffect(() => {
    let over = false;
    void draftKept(personId, key)
      .catch(() => null)
      .then((kept) => {
        if (!over) show((kept as T | null) ?? begin.current());
      });
    return () => {
      over = true;
    };
  }, [personId, key, show]);
  // Asked for at once with every key, not one after the other: the page may be gone before the last has its turn.
  // The database writes them in the order in which they were asked for.
  const write = useCallback(
    (next: T | null) =>
      keepDraft(personId, key, next).then(
        () => setSafe(true),
        () => setSafe(false),
      ),
    [personId, key],
  );
  const set = useCallback(
    (next: T) => {
      show(next);
      void write(next);
    },
    [show, write],
  );
  const change = useCallback(
    (make: (from: T) => T) => {
      if (now.current !== undefined) set(make(now.current));
    },
    [set],
  );
  const drop = useCallback(() => write(null), [write]);
  /** Forgets what is kept and begins anew in the window too. */
  const clear = useCallback(() => {
    show(begin.current());
    return write(null);
  }, [show, write]);
  return { value, set, change, drop, clear, safe };
}
