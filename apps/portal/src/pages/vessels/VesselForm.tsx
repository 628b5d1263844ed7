import type { Vessel } from '@garboard/contract/vessels';
import { useState } from 'react';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { VesselFields } from './VesselFields.tsx';
import { bodyOf, draftOf } from './vesselDraft.ts';

/** A sheet for a new vessel, over the form that needs one. */
export function VesselForm({
  suggestedName,
  onClose,
  onSaved,
}: {
  suggestedName: string;
  onClose: () => void;
  onSaved: (vessel: Vessel) => void;
}) {
  const [draft, setDraft] = useState(() => draftOf(null, suggestedName));
  const save = useAction({
    run: (body: CallArgs<'createVessel'>['body'], idempotencyKey) =>
      call('createVessel', { body, idempotencyKey }),
    done: (vessel) => `${vessel.name} entered.`,
    touches: ['listVessels'],
    onDone: onSaved,
  });
  return (
    <Dialog title="New vessel" onClose={onClose} wide>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          // React passes events through portals: this form stands inside the survey's.
          event.stopPropagation();
          save.run(bodyOf(draft));
        }}
      >
        <ErrorNotice error={save.error} />
        <VesselFields
          draft={draft}
          set={(change) => setDraft((now) => ({ ...now, ...change }))}
          error={save.error}
        />
        <div className="actions">
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
            Enter the vessel
          </Button>
        </div>
      </form>
    </Dialog>
  );
}
