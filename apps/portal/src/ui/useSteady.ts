import { useCallback, useInsertionEffect, useRef } from 'react';

/**
 * A function that stays the same object for as long as its component lives and always does what the last rendered one
 * does: for children that are drawn anew only when what they are given has changed. Not to be called while drawing.
 */
export function useSteady<A extends unknown[], R>(act: (...args: A) => R): (...args: A) => R {
  const latest = useRef(act);
  useInsertionEffect(() => {
    latest.current = act;
  });
  return useCallback((...args: A) => latest.current(...args), []);
}
