import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextArea } from '../../ui/Field.tsx';

/** Asks for the reason of a step that isn't taken back, in a sheet of its own. */
export function Reason({
  title,
  words,
  label = 'Reason',
  confirm,
  busy,
  error,
  onConfirm,
  onClose,
}: {
  title: string;
  words: string;
  label?: string;
  confirm: string;
  busy: boolean;
  error: unknown;
  onConfirm: (reason: string) => void;
  onClose: () => void;
}) {
  const [reason, setReason] = useState('');
  return (
    <Dialog title={title} onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          onConfirm(reason.replace(/\s*\n\s*/g, ' '));
        }}
      >
        <p>{words}</p>
        <ErrorNotice error={error} />
        <TextArea label={label} required maxLength={1_000} value={reason} onChange={setReason} />
        <div className="actions">
          <Button kind="main" type="submit" busy={busy}>
            {confirm}
          </Button>
          <Button onClick={onClose}>Cancel</Button>
        </div>
      </form>
    </Dialog>
  );
}
