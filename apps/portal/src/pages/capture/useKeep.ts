import { useState } from 'react';
import { isFull } from '../../capture/space.ts';

/** Keeps something once at a time, and says in words when there is no room for it. */
export function useKeep() {
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  async function run(keep: () => Promise<void>): Promise<void> {
    if (busy) return;
    setBusy(true);
    setTrouble(null);
    try {
      await keep();
    } catch (error) {
      setTrouble(
        isFull(error)
          ? 'This telephone gives the page no more room, so this is not kept yet. Leave the page open: whatever was ' +
              'kept before is safe. Send what is waiting, or free some room, then try again.'
          : 'This could not be kept. Leave the page open and try again.',
      );
    }
    setBusy(false);
  }
  return { run, busy, trouble };
}
