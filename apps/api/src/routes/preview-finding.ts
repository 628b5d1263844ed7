import { setTimeout as sleep } from 'node:timers/promises';
import type { ServedFile } from '@garboard/core/files/served-file';
import { Refusal } from '@garboard/core/problems';
import { findingPreviewFile, requestFindingPreview } from '@garboard/core/reports/request-finding-preview';
import { newId } from '@garboard/db/ids';
import type { Deps } from '../http/deps.ts';
import type { Within } from '../http/serve-bytes.ts';

/** How long a caller waits for a worker, in milliseconds, and how often it is looked whether it is done. */
const patienceMs = 15_000;
const lookMs = 15;

/**
 * Has a worker print one finding and waits for it. The job goes to the queue without the outbox, which is looked at
 * a few times a second only: when it is lost nothing else is, and the caller asks again.
 *
 * @throws Refusal as `requestFindingPreview`; `unavailable` when no worker answers in time.
 */
export async function previewFinding(deps: Deps, within: Within, findingId: string): Promise<ServedFile> {
  const data = await within((ctx) => requestFindingPreview(ctx, findingId));
  await deps.previews.add([{ id: newId(), name: 'finding.preview', data }]);
  const end = Date.now() + patienceMs;
  while (Date.now() < end) {
    await sleep(lookMs);
    const file = await within((ctx) => findingPreviewFile(ctx, data.reportId));
    if (file) return file;
  }
  throw new Refusal(
    'unavailable',
    'The preview was not made in time: the server is busy, or its worker is not running. Ask again in a moment.',
  );
}
