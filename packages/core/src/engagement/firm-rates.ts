import type { FirmRates } from '@garboard/contract/quotations';
import type { ReleaseRule } from '@garboard/trade/engagement';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';

/** What a firm that hasn't said anything charges: nothing, and it hands over at once. */
const unset: FirmRates = {
  currency: 'EUR',
  perLength: 0,
  lengthUnit: 'm',
  perHour: 0,
  perDistance: 0,
  distanceUnit: 'km',
  minimum: 0,
  taxName: '',
  taxRate: 0,
  quotationDays: 30,
  paymentDays: 14,
  releaseRule: 'at-once',
  paymentWords: '',
  version: 0,
};

/** The firm's rates; of version 0 while none were set. */
export async function ratesOf(ctx: Ctx, firmId: string): Promise<FirmRates> {
  const row = await ctx.tx.firmRates.findUnique({ where: { firmId } });
  if (!row) return unset;
  return {
    ...row,
    lengthUnit: row.lengthUnit === 'ft' ? 'ft' : 'm',
    distanceUnit: row.distanceUnit === 'mile' ? 'mile' : 'km',
    releaseRule: row.releaseRule as ReleaseRule,
  };
}

/** The same where money is asked for. @throws Refusal `wrong-state` while none were set */
export async function ratesSet(ctx: Ctx, firmId: string): Promise<FirmRates> {
  const rates = await ratesOf(ctx, firmId);
  if (rates.version === 0) {
    throw wrongState(
      'Your firm has not set its rates and currency yet. A principal does so on the firm’s page.',
    );
  }
  return rates;
}
