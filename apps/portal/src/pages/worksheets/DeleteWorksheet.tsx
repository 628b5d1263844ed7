import type { Worksheet } from '@garboard/contract/worksheets';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';

/** Deletes a worksheet that was never issued, after asking. */
export function DeleteWorksheet({ worksheet, onDeleted }: { worksheet: Worksheet; onDeleted: () => void }) {
  const [asking, setAsking] = useState(false);
  const remove = useAction({
    run: () => call('deleteWorksheet', { params: { id: worksheet.id } }),
    done: `Deleted: ${worksheet.title}.`,
    touches: ['listWorksheets', 'getFinding', 'listFindings', 'listEvents'],
    onDone: onDeleted,
  });
  return (
    <>
      <Button kind="quiet" onClick={() => setAsking(true)}>
        Delete this worksheet
      </Button>
      {asking ? (
        <ConfirmDialog
          title="Delete this worksheet?"
          confirmLabel="Delete the worksheet"
          busy={remove.busy}
          onClose={() => setAsking(false)}
          onConfirm={() => remove.run(undefined)}
        >
          <p>“{worksheet.title}” and its readings will be gone for good.</p>
          <ErrorNotice error={remove.error} />
        </ConfirmDialog>
      ) : null}
    </>
  );
}
