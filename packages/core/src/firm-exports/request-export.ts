import type { FirmExport } from '@garboard/contract/archive';
import { newId } from '@garboard/db/ids';
import { actorId, actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { loadFirm, mustBePrincipal } from '../firms/load-firm.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { wrongState } from '../problems.ts';
import { presentExport } from './present-export.ts';
import { removeArchives } from './sweep-exports.ts';

/**
 * Asks for an archive of everything the firm has; the one made before goes.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` while one is being made
 */
export async function requestExport(ctx: Ctx, firmId: string): Promise<FirmExport> {
  await loadFirm(ctx, firmId);
  mustBePrincipal(ctx, firmId);
  const { tx } = ctx;
  // Two who ask at the same moment: the second waits here, and finds one under way.
  await tx.$queryRaw`SELECT FROM firms WHERE id = ${firmId}::uuid FOR UPDATE`;
  const underWay = await tx.firmExport.findFirst({ where: { firmId, state: { in: ['queued', 'making'] } } });
  if (underWay) {
    throw wrongState(
      `An archive is being made already, asked for by ${underWay.askedBy}. Wait until it is ready.`,
    );
  }
  await removeArchives(ctx, { firmId });
  const asked = { askedById: actorId(ctx.actor), askedBy: actorName(ctx.actor), askedAt: ctx.clock() };
  const row = await tx.firmExport.create({ data: { id: newId(), firmId, ...asked } });
  await recordEvent(ctx, { firmId, kind: 'firm.export-asked', role: 'principal' });
  await enqueue(tx, 'firm.export', { firmId, exportId: row.id });
  return presentExport(row);
}
