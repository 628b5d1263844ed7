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
  const writing = useRef(false);
  const latest = useRef<T | null>(null);
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
  const write = useCallback(async () => {
    if (writing.current) return;
    writing.current = true;
    try {
      let written: T | null | undefined;
      while (written !== latest.current) {
        written = latest.current;
        await keepDraft(personId, key, written);
      }
    } catch {
      // Without room the text still stands in the window; keeping it for good says so.
    }
    writing.current = false;
  }, [personId, key]);
  const set = useCallback(
    (next: T) => {
      setValue(next);
      latest.current = next;
      void write();
    },
    [write],
  );
  const drop = useCallback(() => {
    latest.current = null;
    return write();
  }, [write]);
  return { value, set, drop };
}
