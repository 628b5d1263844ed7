import { useEffect, useState } from 'react';
import type { RouteName } from '../api/client.ts';
import { isStatus } from '../api/problems.ts';
import { useAction } from '../api/queries.ts';
import { same } from './merge.ts';

interface Settings<R, V> {
  /** What was loaded; null for a new record. */
  record: R | null;
  valuesOf: (record: R | null) => V;
  /** Saves, refused with 412 when `base` is no longer what the server has. */
  save: (values: V, base: R | null, idempotencyKey: string) => Promise<R>;
  /** Fetches what the server has now. */
  reload: () => Promise<R>;
  /** Under this name unsaved writing outlives a closed page, until the session ends. */
  keepAs: string;
  touches: readonly RouteName[];
  done: (saved: R) => string;
  onDone: (saved: R) => void;
}

/**
 * Editing one record so that nothing written is lost: unsaved text is kept in the window's own storage, and a
 * save refused because someone else saved first brings their version to be put together with ours.
 */
export function useRecordEdit<R extends { version: number }, V extends object>(settings: Settings<R, V>) {
  const { keepAs, valuesOf } = settings;
  const [start] = useState(() => restore<R, V>(keepAs));
  const [base, setBase] = useState<R | null>(start?.base ?? settings.record);
  const [values, setValues] = useState<V>(() => start?.values ?? valuesOf(settings.record));
  const [restored, setRestored] = useState(start !== null);
  const [theirs, setTheirs] = useState<R | null>(null);
  const unsaved = !same(values, valuesOf(base));

  useEffect(() => {
    if (unsaved) sessionStorage.setItem(keepAs, JSON.stringify({ base, values }));
    else sessionStorage.removeItem(keepAs);
  }, [keepAs, unsaved, base, values]);

  const action = useAction({
    run: async (attempt: { values: V; base: R | null }, key) => {
      try {
        return await settings.save(attempt.values, attempt.base, key);
      } catch (error) {
        if (isStatus(error, 412)) setTheirs(await settings.reload());
        throw error;
      }
    },
    done: settings.done,
    touches: settings.touches,
    onDone: (saved) => {
      sessionStorage.removeItem(keepAs);
      setBase(saved);
      setValues(valuesOf(saved));
      setRestored(false);
      settings.onDone(saved);
    },
  });

  return {
    base,
    values,
    set: (change: Partial<V>) => setValues((now) => ({ ...now, ...change })),
    unsaved,
    restored: restored && unsaved,
    busy: action.busy,
    error: theirs ? null : action.error,
    save: () => action.run({ values, base }),
    /** Back to what was loaded. */
    discard: () => {
      sessionStorage.removeItem(keepAs);
      setBase(settings.record);
      setValues(valuesOf(settings.record));
      setRestored(false);
    },
    theirs,
    /** Saves what was put together, on top of their version. */
    settle: (together: V) => {
      setBase(theirs);
      setValues(together);
      setTheirs(null);
      action.run({ values: together, base: theirs });
    },
    /** Back to the form, undecided; the next save asks again. */
    postpone: () => setTheirs(null),
  };
}

function restore<R, V>(keepAs: string): { base: R | null; values: V } | null {
  try {
    return JSON.parse(sessionStorage.getItem(keepAs) ?? 'null') as { base: R | null; values: V } | null;
  } catch {
    return null;
  }
}
