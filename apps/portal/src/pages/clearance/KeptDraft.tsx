import type { ReactNode } from 'react';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';

/** The foot of a form whose draft is kept on the device: its buttons, throwing it away, and where it is kept. */
export function KeptDraft({
  draft,
  busy,
  throwAway,
  children,
}: {
  draft: { begun: boolean; safe: boolean; forget(): Promise<void> };
  busy: boolean;
  throwAway: { title: string; words: string };
  /** The form's own buttons. */
  children: ReactNode;
}) {
  const [asking, setAsking] = useState(false);
  return (
    <>
      <div className="actions">
        {children}
        {draft.begun && !busy ? (
          <Button kind="quiet" onClick={() => setAsking(true)}>
            Throw it away
          </Button>
        ) : null}
      </div>
      {draft.begun ? (
        <p className="soft small">
          {draft.safe
            ? 'Kept on this device until it has arrived, also when the page is closed.'
            : 'This device keeps nothing for the page: leave it open until it is sent.'}
        </p>
      ) : null}
      {asking ? (
        <ConfirmDialog
          title={throwAway.title}
          cancelLabel="Keep it"
          confirmLabel="Throw it away"
          onClose={() => setAsking(false)}
          onConfirm={() => {
            setAsking(false);
            void draft.forget();
          }}
        >
          <p>{throwAway.words}</p>
        </ConfirmDialog>
      ) : null}
    </>
  );
}
