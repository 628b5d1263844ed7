import type { CatalogueEntry } from '@garboard/contract/catalogue';
import { etagOf } from '@garboard/contract/client';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';

/** Goes back to our words, or retires an entry of the firm's own, after asking. */
export function TakeBack({
  entry,
  firmId,
  onDone,
}: {
  entry: CatalogueEntry;
  firmId: string;
  onDone: () => void;
}) {
  const [asking, setAsking] = useState(false);
  const own = entry.origin === 'firm';
  const action = useAction({
    run: () =>
      call('deleteCatalogueEntry', {
        params: { key: entry.key },
        query: { firmId },
        ifMatch: etagOf(entry),
      }),
    done: own ? `Retired: ${entry.title}.` : 'Back to Garboard’s words.',
    touches: ['listCatalogue', ...(own ? [] : (['getCatalogueEntry', 'listCatalogueVersions'] as const))],
    onDone: () => {
      setAsking(false);
      onDone();
    },
  });
  const words = own ? 'Retire this entry' : 'Go back to Garboard’s words';
  return (
    <div>
      <Button kind="quiet" onClick={() => setAsking(true)}>
        {words}
      </Button>
      {asking ? (
        <ConfirmDialog
          title={`${words}?`}
          confirmLabel={words}
          busy={action.busy}
          onClose={() => setAsking(false)}
          onConfirm={() => action.run(undefined)}
        >
          <p>
            Findings written from it keep their words, and your firm’s versions stay on record.
            {own ? ' It will no longer be found.' : ''}
          </p>
          <ErrorNotice error={action.error} />
        </ConfirmDialog>
      ) : null}
    </div>
  );
}
