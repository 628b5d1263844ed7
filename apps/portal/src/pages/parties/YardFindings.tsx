import type { Survey } from '@garboard/contract/surveys';
import { useState } from 'react';
import type { Item } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction, useWholeList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count } from '../../ui/format.ts';
import { ChooseFindings } from './ChooseFindings.tsx';

/** Says which findings a yard puts right. */
export function YardFindings({
  survey,
  yard,
  onClose,
}: {
  survey: Survey;
  yard: Item<'listParties'>;
  onClose: () => void;
}) {
  const findings = useWholeList('listFindings', { params: { id: survey.id } });
  const [chosen, setChosen] = useState(yard.findingIds);
  const save = useAction({
    run: (findingIds: string[]) =>
      call('putYardFindings', { params: { id: survey.id, partyId: yard.id }, body: { findingIds } }),
    done: (party) => `${party.name} puts right ${count(party.findingIds.length, 'finding')}.`,
    touches: ['listParties', 'listEvents', 'listFindingEvents'],
    onDone: onClose,
  });
  return (
    <Dialog title={`What ${yard.name} puts right`} onClose={onClose}>
      <ErrorNotice error={save.error ?? findings.error} />
      {findings.data ? (
        <ChooseFindings findings={findings.data} values={chosen} onChange={setChosen} />
      ) : (
        <Loading what="the findings" />
      )}
      <div className="actions">
        <Button onClick={onClose}>Cancel</Button>
        <Button kind="main" busy={save.busy} busyLabel="Saving…" onClick={() => save.run(chosen)}>
          Save
        </Button>
      </div>
    </Dialog>
  );
}
