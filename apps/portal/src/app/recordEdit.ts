import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import type { RouteName } from '../api/client.ts';
import { isStatus } from '../api/problems.ts';
import { useAction } from '../api/queries.ts';
import { useStatus } from '../ui/Status.tsx';
import { useAutosave } from './autosave.ts';
import { putTogether, same } from './merge.ts';

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
  /** Saves by itself after a pause, whenever what is written could be saved. */
  autosave?: { may: (values: V) => boolean; onSaved?: (saved: R) => void } | undefined;
}

interface Attempt<R, V> {
  values: V;
  base: R | null;
  /** Saved by itself, not by hand. */
  quiet: boolean;
}

/**
 * Editing one record so that nothing written is lost: unsaved text is kept in the window's own storage, and a
 * save refused because someone else saved first brings their version to be put together with ours.
 */
export function useRecordEdit<R extends { version: number }, V extends object>(settings: Settings<R, V>) {
  const { keepAs, valuesOf } = settings;
  const say = useStatus();
  const queryClient = useQueryClient();
  const [start] = useState(() => restore<R, V>(keepAs));
  const [base, setBase] = useState<R | null>(start?.base ?? settings.record);
  const [values, setValues] = useState<V>(() => start?.values ?? valuesOf(settings.record));
  // What the server has, as it was written here: it tidies texts, and typing must not be tidied under the hand.
  const [kept, setKept] = useState<V>(() => valuesOf(start?.base ?? settings.record));
  const [restored, setRestored] = useState(start !== null);
  const [theirs, setTheirs] = useState<R | null>(null);
  const [refused, setRefused] = useState<V | null>(null);
  const [quiet, setQuiet] = useState(false);
  const after = useRef<((saved: R) => void) | null>(null);
  const ended = useRef(false);
  const behind = useRef(false);
  const unsaved = !same(values, kept);

  useEffect(() => {
    if (unsaved) sessionStorage.setItem(keepAs, JSON.stringify({ base, values }));
    else sessionStorage.removeItem(keepAs);
  }, [keepAs, unsaved, base, values]);

  const refresh = () => {
    const touched = new Set<unknown>(settings.touches);
    return queryClient.invalidateQueries({ predicate: (query) => touched.has(query.queryKey[0]) });
  };
  const action = useAction({
    run: async (attempt: Attempt<R, V>, key): Promise<{ saved: R; sent: V }> => {
      try {
        return { saved: await settings.save(attempt.values, attempt.base, key), sent: attempt.values };
      } catch (error) {
        if (!isStatus(error, 412)) {
          if (!(error instanceof TypeError)) setRefused(attempt.values);
          throw error;
        }
        const newest = await settings.reload();
        const mine = attempt.values;
        const together = putTogether(valuesOf(attempt.base), mine, valuesOf(newest));
        if (attempt.quiet && together) {
          const saved = await settings.save(together, newest, key);
          setValues((now) => putTogether(mine, now, together) ?? now);
          return { saved, sent: together };
        }
        if (attempt.quiet) setRefused(mine);
        else setTheirs(newest);
        throw error;
      }
    },
    onDone: ({ saved, sent }, { quiet }) => {
      setBase(saved);
      setRefused(null);
      behind.current = true;
      if (quiet) {
        setKept(sent);
        settings.autosave?.onSaved?.(saved);
      } else finish(saved);
    },
  });

  function finish(saved: R) {
    sessionStorage.removeItem(keepAs);
    setValues(valuesOf(saved));
    setKept(valuesOf(saved));
    setRestored(false);
    ended.current = true;
    behind.current = false;
    void refresh();
    say(settings.done(saved));
    (after.current ?? settings.onDone)(saved);
    after.current = null;
  }

  function send(quietly: boolean) {
    setQuiet(quietly);
    action.run({ values, base, quiet: quietly });
  }
  function save() {
    if (settings.autosave && base && !unsaved) finish(base);
    else send(false);
  }
  const conflict = refused !== null && isStatus(action.error, 412) && !theirs;
  const unreachable = quiet && action.error instanceof TypeError;
  const possible = Boolean(settings.autosave?.may(values)) && unsaved && !theirs && !conflict;
  const hand = useAutosave({
    ...{ possible, unreachable, busy: action.busy },
    // The same words would be refused again.
    refused: same(refused, values),
    of: values,
    send: () => send(true),
    save,
    ended,
  });
  const refreshLast = useRef(refresh);
  refreshLast.current = refresh;
  useEffect(
    () => () => {
      if (behind.current) void refreshLast.current();
    },
    [],
  );

  return {
    base,
    values,
    set: (change: Partial<V>) => {
      ended.current = false;
      setValues((now) => ({ ...now, ...change }));
    },
    unsaved,
    restored: restored && unsaved,
    busy: hand.waiting || (action.busy && !quiet),
    error: theirs || conflict || unreachable ? null : action.error,
    /** Saves by hand; `then` goes on elsewhere than `onDone` does. */
    save: (then?: (saved: R) => void) => {
      after.current = then ?? null;
      hand.byHand();
    },
    /** How saving by itself stands. */
    auto: { saving: action.busy, conflict, possible, unreachable },
    /** Back to what was loaded. */
    discard: () => {
      sessionStorage.removeItem(keepAs);
      ended.current = true;
      setBase(settings.record);
      setValues(valuesOf(settings.record));
      setKept(valuesOf(settings.record));
      setRestored(false);
    },
    theirs,
    /** Saves what was put together, on top of their version. */
    settle: (together: V) => {
      setBase(theirs);
      setValues(together);
      setTheirs(null);
      setQuiet(false);
      action.run({ values: together, base: theirs, quiet: false });
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
