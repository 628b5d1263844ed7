import { newId } from '@garboard/db/ids';
import { actorId, actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { loadFirm, mustBePrincipal } from '../firms/load-firm.ts';
import { wrongState } from '../problems.ts';
import { type FirmTermsView, presentTerms } from './list-firm-terms.ts';

/**
 * Saves the firm's terms as its next version; those sent to clients before stay as they were sent.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` when nothing was changed
 */
export async function saveFirmTerms(
  ctx: Ctx,
  { firmId, text }: { firmId: string; text: string },
): Promise<FirmTermsView> {
  await loadFirm(ctx, firmId);
  mustBePrincipal(ctx, firmId);
  // Two who save at once become two versions, one after the other.
  await ctx.tx.$queryRaw`SELECT id FROM firms WHERE id = ${firmId}::uuid FOR UPDATE`;
  const latest = await ctx.tx.firmTerms.findFirst({ where: { firmId }, orderBy: { version: 'desc' } });
  if (latest?.text === text) throw wrongState(`These are the words of version ${latest.version} already.`);
  const row = await ctx.tx.firmTerms.create({
    data: {
      id: newId(),
      firmId,
      version: (latest?.version ?? 0) + 1,
      text,
      savedAt: ctx.clock(),
      savedById: actorId(ctx.actor),
      savedBy: actorName(ctx.actor),
    },
  });
  await recordEvent(ctx, {
    ...{ firmId, kind: 'firm.terms-saved', role: 'principal' },
    data: { version: row.version },
  });
  return presentTerms(row);
}
