import { dayIn } from '@garboard/trade/due-dates';
import { dateFaults } from '@garboard/trade/inventory';
import type { Ctx } from '../context.ts';
import { Refusal } from '../problems.ts';

/** @throws Refusal `invalid-input` pointing at each date that can't be true where the survey takes place. */
export function refuseImpossibleDates(
  ctx: Ctx,
  timeZone: string,
  dates: { madeOn: string | null; expiresOn: string | null },
): void {
  const faults = dateFaults(dates, dayIn(timeZone, ctx.clock()));
  if (faults.length === 0) return;
  throw new Refusal(
    'invalid-input',
    faults.map((f) => f.detail).join(' '),
    faults.map(({ field, detail }) => ({ pointer: `/${field}`, detail })),
  );
}
