import { useState } from 'react';

interface Steps<T> {
  past: T[];
  future: T[];
}

/**
 * Undo and redo over a value kept elsewhere. `take` notes the value before a change; changes of one gesture are noted
 * once.
 */
export function useSteps<T>(now: T, set: (value: T) => void) {
  const [{ past, future }, setSteps] = useState<Steps<T>>({ past: [], future: [] });
  return {
    canUndo: past.length > 0,
    canRedo: future.length > 0,
    /** Makes a change that can be undone; `from` is the value it began with, when a gesture changed it on the way. */
    take(value: T, from: T = now) {
      setSteps({ past: [...past, from], future: [] });
      set(value);
    },
    undo() {
      const last = past.at(-1);
      if (last === undefined) return;
      setSteps({ past: past.slice(0, -1), future: [now, ...future] });
      set(last);
    },
    redo() {
      const [next] = future;
      if (next === undefined) return;
      setSteps({ past: [...past, now], future: future.slice(1) });
      set(next);
    },
    /** Forgets all steps, when the value has been replaced from outside. */
    forget: () => setSteps({ past: [], future: [] }),
  };
}
