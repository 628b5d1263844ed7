import type { Finding } from '@garboard/contract/findings';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';

/** Deletes a finding that was never issued, after asking. Its photos stay in the survey. */
export function DeleteFinding({ finding, onDeleted }: { finding: Finding; onDeleted: () => void }) {
  const [asking, setAsking] = useState(false);
  const remove = useAction({
    run: () => call('deleteFinding', { params: { id: finding.id } }),
    done: `Deleted: ${finding.title}.`,
    touches: ['listFindings', 'getSurvey', 'listSurveys', 'listEvents'],
    onDone: onDeleted,
  });
  return (
    <>
      <Button kind="quiet" onClick={() => setAsking(true)}>
        Delete this finding
      </Button>
      {asking ? (
        <ConfirmDialog
          title="Delete this finding?"
          confirmLabel="Delete the finding"
          busy={remove.busy}
          onClose={() => setAsking(false)}
          onConfirm={() => remove.run(undefined)}
        >
          <p>“{finding.title}” will be gone for good. Its photos stay with the survey.</p>
          <ErrorNotice error={remove.error} />
        </ConfirmDialog>
      ) : null}
    </>
  );
}
