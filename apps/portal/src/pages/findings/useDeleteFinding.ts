import type { RouteName } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { useStatus } from '../../ui/Status.tsx';

const touches: readonly RouteName[] = [
  ...(['listFindings', 'listDeletedFindings', 'getFinding', 'getSurvey', 'listSurveys'] as const),
  ...(['listEvents', 'listWorksheets'] as const),
];

/** Brings a deleted finding back. */
export function useRestoreFinding() {
  return useAction({
    run: (id: string) => call('restoreFinding', { params: { id } }),
    done: (back) => `Brought back as number ${back.number}: ${back.title}.`,
    touches,
  });
}

/** Deletes a finding that was never issued, at once: it can be brought back from the line that says so. */
export function useDeleteFinding(onDeleted: () => void) {
  const say = useStatus();
  const restore = useRestoreFinding();
  return useAction({
    run: ({ id }: { id: string; title: string }) => call('deleteFinding', { params: { id } }),
    touches,
    onDone: (_, { id, title }) => {
      onDeleted();
      say(`Deleted: ${title}.`, { label: 'Undo', run: () => restore.run(id) });
    },
  });
}
