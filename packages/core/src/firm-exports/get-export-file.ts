import { firmRole } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import type { ServedFile } from '../files/served-file.ts';
import { mustBePrincipal } from '../firms/load-firm.ts';
import { notFound, wrongState } from '../problems.ts';

/**
 * The archive itself, for the firm's principal; that it was fetched is put on record.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` when it isn't there yet or no more
 */
export async function getExportFile(ctx: Ctx, id: string): Promise<ServedFile> {
  const row = await ctx.tx.firmExport.findUnique({ where: { id }, include: { firm: true } });
  if (!row || !firmRole(ctx.actor, row.firmId)) throw notFound('archive');
  mustBePrincipal(ctx, row.firmId);
  if (row.state !== 'ready' || !row.sha256) {
    throw wrongState(
      row.state === 'removed'
        ? 'This archive was removed. Make a new one.'
        : 'This archive isn’t ready. Wait until it is, or make a new one when it failed.',
    );
  }
  await recordEvent(ctx, { firmId: row.firmId, kind: 'firm.archive-fetched', role: 'principal' });
  const day = (row.readyAt ?? row.askedAt).toISOString().slice(0, 10);
  return {
    ...{ sha256: row.sha256, mediaType: 'application/zip', fileName: `${row.firm.name} ${day}.zip` },
    ...{ immutable: false, download: true },
  };
}
