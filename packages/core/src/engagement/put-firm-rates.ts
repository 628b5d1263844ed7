import type { FirmRates, firmRatesPut } from '@garboard/contract/quotations';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { loadFirm, mustBePrincipal } from '../firms/load-firm.ts';
import { staleVersion } from '../problems.ts';
import { ratesOf } from './firm-rates.ts';

export interface PutFirmRates {
  firmId: string;
  rates: z.output<typeof firmRatesPut>;
  ifMatch?: number | undefined;
}

/**
 * Sets what the firm charges; quotations and invoices made before keep what they say.
 *
 * @throws Refusal `not-found`, `not-allowed`, `stale-version`
 */
export async function putFirmRates(ctx: Ctx, { firmId, rates, ifMatch }: PutFirmRates): Promise<FirmRates> {
  await loadFirm(ctx, firmId);
  mustBePrincipal(ctx, firmId);
  // The first of two who set them at the same moment makes the row, the other finds it.
  const made = await ctx.tx.firmRates.createMany({
    data: ifMatch === undefined || ifMatch === 0 ? [{ firmId, ...rates }] : [],
    skipDuplicates: true,
  });
  if (made.count === 0) {
    const changed = await ctx.tx.firmRates.updateMany({
      where: { firmId, ...(ifMatch === undefined ? {} : { version: ifMatch }) },
      data: { ...rates, version: { increment: 1 } },
    });
    if (changed.count === 0) throw staleVersion('page of rates');
  }
  await recordEvent(ctx, { firmId, kind: 'firm.rates-set', role: 'principal' });
  return ratesOf(ctx, firmId);
}
