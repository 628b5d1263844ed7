import { grantFor } from '@garboard/trade/permissions';
import { staffFirmIds } from '../access/actor.ts';
import { workingFirm } from '../access/working-firm.ts';
import type { ReadCtx } from '../context.ts';
import { notAllowed, notFound } from '../problems.ts';

/** Whose catalogue is asked for: only staff have one. `mayWrite` says whether the actor may change it. */
export function catalogueFirm(
  ctx: ReadCtx,
  wished: string | undefined,
): { firmId: string; mayWrite: boolean } {
  const { firmId, role } = workingFirm(ctx.actor, wished, 'catalogue.read');
  return { firmId, mayWrite: grantFor('catalogue.write', role) === 'yes' };
}

/** The same for one entry: to those without a catalogue there is no such entry. @throws Refusal `not-found` */
export function entryFirm(ctx: ReadCtx, wished: string | undefined): { firmId: string; mayWrite: boolean } {
  if (staffFirmIds(ctx.actor).length === 0) throw notFound('entry in the catalogue');
  return catalogueFirm(ctx, wished);
}

/** @throws Refusal `not-allowed` */
export function mustWrite(firm: { mayWrite: boolean }): void {
  if (!firm.mayWrite) throw notAllowed('Only the firm’s principals and surveyors may change its catalogue.');
}
