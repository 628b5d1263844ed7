import type { RefObject } from 'react';
import { useEffect, useRef, useState } from 'react';

/** How long a pause in writing is before it is saved, and before it is tried again without a connection. */
const pauseMs = 1000;
const retryMs = 5000;

interface Settings {
  /** Whether there is something to save and it could be saved. */
  possible: boolean;
  busy: boolean;
  /** Whether the last try met no server. */
  unreachable: boolean;
  refused: boolean;
  /** What is written: a change of it begins the pause anew. */
  of: unknown;
  send: () => void;
  /** Saves by hand. */
  save: () => void;
  /** True once the form is done with: saved by hand, or given up. */
  ended: RefObject<boolean>;
}

/**
 * Saves a moment after a pause, again after a while when no server answered, and at once when the page is left. A
 * save by hand waits for one that is under way.
 */
export function useAutosave(settings: Settings) {
  const [byHand, setByHand] = useState(false);
  const last = useRef(settings);
  last.current = settings;
  const { possible, busy, refused, unreachable, of } = settings;
  const due = possible && !busy && !refused && !byHand;
  useEffect(() => {
    if (!due) return;
    const send = () => {
      if (last.current.of === of) last.current.send();
    };
    const timer = setTimeout(send, unreachable ? retryMs : pauseMs);
    return () => clearTimeout(timer);
  }, [due, unreachable, of]);
  useEffect(() => {
    if (!byHand || busy) return;
    setByHand(false);
    last.current.save();
  }, [byHand, busy]);
  useEffect(
    () => () => {
      const { possible: may, busy: sending, refused: no, ended, send } = last.current;
      if (may && !sending && !no && !ended.current) send();
    },
    [],
  );
  /** Whether a save by hand waits, and how to ask for one. */
  return { waiting: byHand, byHand: () => setByHand(true) };
}
