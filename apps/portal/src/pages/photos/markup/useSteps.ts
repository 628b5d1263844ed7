import { useRef, useState } from 'react';

interface Steps<T> {
  past: T[];
  future: T[];
}

/** Undo and redo over a value kept elsewhere. */
export function useSteps<T>(now: T, set: (value: T) => void) {
  const [{ past, future }, setSteps] = useState<Steps<T>>({ past: [], future: [] });
  const running = useRef('');
  return {
    canUndo: past.length > 0,
    canRedo: future.length > 0,
    /**
     * Makes a change that can be undone. Changes of one `run` that follow one another, such as the letters of a word,
     * are undone together.
     */
    take(value: T, run = '') {
      const goesOn = run !== '' && run === running.current;
      running.current = run;
      if (!goesOn) setSteps({ past: [...past, now], future: [] });
      set(value);
    },
    undo() {
      const last = past.at(-1);
      if (last === undefined) return;
      running.current = '';
      setSteps({ past: past.slice(0, -1), future: [now, ...future] });
      set(last);
    },
    redo() {
      const [next] = future;
      if (next === undefined) return;
      running.current = '';
      setSteps({ past: [...past, now], future: future.slice(1) });
      set(next);
    },
    /** Forgets all steps, when the value has been replaced from outside. */
    forget: () => setSteps({ past: [], future: [] }),
  };
}
