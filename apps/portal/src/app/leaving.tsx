import { useEffect, useState } from 'react';
import { ConfirmDialog } from '../ui/Dialog.tsx';
import type { Go } from './guard.ts';
import { setGuard } from './guard.ts';
import { holdWriting } from './writing.ts';

/** Keeps a newer portal from taking the place of this one while something is being written. */
export function useHeldWriting(writing: boolean) {
  useEffect(() => (writing ? holdWriting() : undefined), [writing]);
}

/** Warns before the window is closed on unsaved writing, and keeps a newer portal from taking its place meanwhile. */
export function useCloseWarning(unsaved: boolean) {
  useHeldWriting(unsaved);
  useEffect(() => {
    if (!unsaved) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
  }, [unsaved]);
}

/**
 * Warns before unsaved writing is left, by a link or by closing the window. Render what it returns.
 * `pass` lets one deliberate step through, after saving.
 */
export function useLeaveWarning(
  unsaved: boolean,
  onLeave: () => void,
  words = {
    title: 'Leave without saving?',
    text: 'What you changed on this page has not been saved.',
    leave: 'Leave without saving',
  },
) {
  const [waiting, setWaiting] = useState<Go | null>(null);
  useEffect(() => {
    if (!unsaved) return;
    setGuard((go) => setWaiting(() => go));
    return () => setGuard(null);
  }, [unsaved]);
  useCloseWarning(unsaved);
  const pass = (go: Go) => {
    setGuard(null);
    go();
  };
  const dialog = waiting ? (
    <ConfirmDialog
      title={words.title}
      cancelLabel="Stay here"
      confirmLabel={words.leave}
      onClose={() => setWaiting(null)}
      onConfirm={() => {
        onLeave();
        pass(waiting);
      }}
    >
      <p>{words.text}</p>
    </ConfirmDialog>
  ) : null;
  return { dialog, pass };
}
