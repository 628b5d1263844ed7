import { useEffect, useState } from 'react';
import { ConfirmDialog } from '../ui/Dialog.tsx';
import type { Go } from './guard.ts';
import { setGuard } from './guard.ts';

/**
 * Warns before unsaved writing is left, by a link or by closing the window. Render what it returns.
 * `pass` lets one deliberate step through, after saving.
 */
export function useLeaveWarning(unsaved: boolean, onLeave: () => void) {
  const [waiting, setWaiting] = useState<Go | null>(null);
  useEffect(() => {
    if (!unsaved) return;
    setGuard((go) => setWaiting(() => go));
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', warn);
    return () => {
      setGuard(null);
      window.removeEventListener('beforeunload', warn);
    };
  }, [unsaved]);
  const pass = (go: Go) => {
    setGuard(null);
    go();
  };
  const dialog = waiting ? (
    <ConfirmDialog
      title="Leave without saving?"
      cancelLabel="Stay here"
      confirmLabel="Leave without saving"
      onClose={() => setWaiting(null)}
      onConfirm={() => {
        onLeave();
        pass(waiting);
      }}
    >
      <p>What you changed on this page has not been saved.</p>
    </ConfirmDialog>
  ) : null;
  return { dialog, pass };
}
