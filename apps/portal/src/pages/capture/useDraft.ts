import { useCallback, useEffect, useRef, useState } from 'react';
import { draftKept, keepDraft } from '../../capture/drafts.ts';
import { useOnBoard } from './person.ts';

const pause = 400;

/**
 * What is being written, kept on the telephone while it is written; it outlives a reload and a crash. Undefined until
 * it is known whether something was being written before. `drop` forgets it.
 */
export function useDraft<T>(key: string, empty: () => T) {
  const { me } = useOnBoard();
  const personId = me.person.id;
  const [value, setValue] = useState<T | undefined>(undefined);
  const timer = useRef(0);
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
  const set = useCallback(
    (next: T) => {
      setValue(next);
      window.clearTimeout(timer.current);
      // Without room the text still stands in the window; keeping it for good says so.
      timer.current = window.setTimeout(
        () => void keepDraft(personId, key, next).catch(() => undefined),
        pause,
      );
    },
    [personId, key],
  );
  const drop = useCallback(() => {
    window.clearTimeout(timer.current);
    return keepDraft(personId, key, null).catch(() => undefined);
  }, [personId, key]);
  return { value, set, drop };
}
