import type { Finding } from '@garboard/contract/findings';
import { useQueryClient } from '@tanstack/react-query';
import { call } from '../../api/client.ts';
import { useAction, useWholeList } from '../../api/queries.ts';

interface Move {
  id: string;
  by: 1 | -1;
}

/** A survey's findings in the order of the report, and moving one of them by one place. */
export function useFindingOrder(surveyId: string) {
  const args = { params: { id: surveyId } };
  const queryClient = useQueryClient();
  const findings = useWholeList('listFindings', args);
  const move = useAction({
    run: async ({ id, by }: Move) => {
      // From what is on the screen now, not from when the button was drawn: the key may be held down.
      const key = ['listFindings', args, 'whole'];
      // A list that is known to be behind lacks what was just recorded, and an order must name every finding.
      const { isInvalidated, fetchStatus } = queryClient.getQueryState(key) ?? {};
      if (isInvalidated || fetchStatus === 'fetching') await findings.refetch({ cancelRefetch: false });
      const before = queryClient.getQueryData<Finding[]>(key) ?? [];
      const after = moved(before, id, by);
      queryClient.setQueryData(key, after);
      try {
        await call('orderFindings', { ...args, body: { ids: after.map((finding) => finding.id) } });
      } catch (error) {
        queryClient.setQueryData(key, before);
        throw error;
      }
      return after;
    },
    done: (after, { id }) => `Now number ${after.findIndex((finding) => finding.id === id) + 1}.`,
    touches: ['listFindings', 'getFinding'],
  });
  return { findings, move };
}

function moved(findings: Finding[], id: string, by: number): Finding[] {
  const from = findings.findIndex((finding) => finding.id === id);
  const to = from + by;
  const [finding, other] = [findings[from], findings[to]];
  if (!finding || !other) return findings;
  const after = [...findings];
  after[from] = other;
  after[to] = finding;
  return after;
}

/** Where a finding is edited, or read once it has been issued. */
export function findingPath(finding: Finding): string {
  return finding.state === 'draft' && finding.may.edit
    ? `/surveys/${finding.surveyId}/findings/${finding.id}/edit`
    : `/findings/${finding.id}`;
}
