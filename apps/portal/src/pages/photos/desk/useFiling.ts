import { etagOf } from '@garboard/contract/client';
import type { Finding } from '@garboard/contract/findings';
import { call } from '../../../api/client.ts';
import { isStatus } from '../../../api/problems.ts';
import { useAction } from '../../../api/queries.ts';
import { count } from '../../../ui/format.ts';

/** Photos put into a finding, or taken out of it again. */
export interface Filing {
  way: 'in' | 'out';
  finding: Pick<Finding, 'id' | 'number' | 'title'>;
  photoIds: readonly string[];
}

// Two people filing photos of one finding at the same moment; more turns than this is something else.
const tries = 4;

/**
 * Puts photos into a finding at its end, or takes them out. Someone else's change of the finding meanwhile doesn't
 * stand in the way: ours is made upon theirs.
 *
 * @returns the photos that were not already as asked
 * @throws ProblemError as the server refuses
 */
async function file({ way, finding, photoIds }: Filing): Promise<string[]> {
  for (let attempt = 1; ; attempt += 1) {
    const now = await call('getFinding', { params: { id: finding.id } });
    const before = now.photos.map((photo) => photo.id);
    const changed = photoIds.filter((id) => before.includes(id) === (way === 'out'));
    if (!changed.length) return [];
    const after = way === 'in' ? [...before, ...changed] : before.filter((id) => !changed.includes(id));
    try {
      await call('updateFinding', {
        params: { id: finding.id },
        body: { photoIds: after },
        ifMatch: etagOf(now),
      });
      return changed;
    } catch (error) {
      if (attempt === tries || !isStatus(error, 412)) throw error;
    }
  }
}

/** Files photos under findings, says so, and remembers the last time so that it can be taken back. */
export function useFiling(onFiled: (filing: Filing) => void) {
  return useAction({
    run: file,
    done: (changed, { way, finding }) => {
      const where = `finding ${finding.number}, ${finding.title}`;
      if (!changed.length) return way === 'in' ? `Already in ${where}.` : `Not in ${where}.`;
      return way === 'in'
        ? `${count(changed.length, 'photo')} put into ${where}.`
        : `${count(changed.length, 'photo')} taken out of ${where}.`;
    },
    touches: ['listFindings', 'getFinding', 'listEvents'],
    onDone: (changed, filing) => onFiled({ ...filing, photoIds: changed }),
  });
}
