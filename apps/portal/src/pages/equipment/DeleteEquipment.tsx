import type { InventoryItem } from '@garboard/contract/inventory';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';

/** Takes a piece of equipment off the list, after asking. */
export function DeleteEquipment({ item, onDeleted }: { item: InventoryItem; onDeleted: () => void }) {
  const [asking, setAsking] = useState(false);
  const remove = useAction({
    run: () => call('deleteInventoryItem', { params: { id: item.id } }),
    done: `Taken off the list: ${item.name}.`,
    touches: ['listInventory', 'listExpiries', 'listEvents'],
    onDone: onDeleted,
  });
  return (
    <>
      <Button kind="quiet" onClick={() => setAsking(true)}>
        Take it off the list
      </Button>
      {asking ? (
        <ConfirmDialog
          title="Take it off the list?"
          confirmLabel="Take it off"
          busy={remove.busy}
          onClose={() => setAsking(false)}
          onConfirm={() => remove.run(undefined)}
        >
          <p>“{item.name}” will be gone from this survey. Reports already issued keep it.</p>
          <ErrorNotice error={remove.error} />
        </ConfirmDialog>
      ) : null}
    </>
  );
}
