import type { FirmRates } from '@garboard/contract/quotations';
import type { Ctx } from '../context.ts';
import { loadFirm } from '../firms/load-firm.ts';
import { ratesOf } from './firm-rates.ts';

/** What the firm charges and when it hands reports over. @throws Refusal `not-found` */
export async function getFirmRates(ctx: Ctx, firmId: string): Promise<FirmRates> {
  await loadFirm(ctx, firmId);
  return ratesOf(ctx, firmId);
}
