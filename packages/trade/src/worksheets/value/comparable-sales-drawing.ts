import { chart } from '../../drawing/chart.ts';
import type { Drawing } from '../../drawing/svg.ts';
import { type Money, moneyText } from '../core/money.ts';
import type { Assessment } from './comparable-sales-conclusion.ts';
import { type Adjusted, outlierLimit } from './comparable-sales-grid.ts';

/** Where an amount lies along the axis, in thousands: a picture needs no more than binary fractions hold. */
const along = (amount: Money): number => amount.div(1000).toNumber();

/** Each sale as a row: price paid as a ring, price adjusted as a dot; the value and its range across them. */
export function spreadDrawing(
  { all, used, z, conclusion: concluded }: Assessment,
  currency: string,
): Drawing {
  const apart = new Set(used.filter((_, i) => z[i]?.abs().gt(outlierLimit)).map((a) => a.number));
  const row = (a: Adjusted) => -a.number;
  const words = (a: Adjusted) => {
    const name = a.sale.boat.length > 28 ? `${a.sale.boat.slice(0, 27)}…` : a.sale.boat;
    return a.sale.leftOut ? `${name} (left out)` : apart.has(a.number) ? `${name} (apart)` : name;
  };
  const ends = all.flatMap((a) => [along(a.sale.price), along(a.price)]);
  const [first, last] = [Math.min(...ends), Math.max(...ends)];
  // Words stand away from the value's line, unless they would run off the picture.
  const side = (a: Adjusted) => {
    const place = (along(a.price) - first) / (last - first || 1);
    if (place < 0.3 || place > 0.75) return place < 0.3 ? ('right' as const) : ('left' as const);
    return concluded && a.price.lt(concluded.value) ? ('left' as const) : ('right' as const);
  };
  const adjusted = (which: readonly Adjusted[]) =>
    which.map((a): [number, number] => [along(a.price), row(a)]);
  const text = (value: Money) => moneyText(value, currency);
  return chart({
    key: 'spread',
    title: 'Spread of the adjusted prices',
    description: concluded
      ? `${used.length} sales; value ${text(concluded.value)}, range ${text(concluded.low)} to ${text(concluded.high)}.`
      : `${used.length} sales, too few for a value.`,
    x: { label: `Price, thousand ${currency}: ring as paid, dot as adjusted` },
    y: {
      label: 'Sale',
      domain: [-all.length - 0.7, -0.3],
      ticks: all.map((a) => ({ at: row(a), words: String(a.number) })),
    },
    height: 90 + 30 * all.length,
    ...(concluded
      ? {
          bands: [{ axis: 'x' as const, from: along(concluded.low), to: along(concluded.high), words: '' }],
          limits: [{ axis: 'x' as const, at: along(concluded.value), words: text(concluded.value) }],
        }
      : {}),
    series: [
      ...all.map((a) => ({
        kind: 'line' as const,
        points: [
          [along(a.sale.price), row(a)],
          [along(a.price), row(a)],
        ] as Array<[number, number]>,
      })),
      { kind: 'hollow-points', points: all.map((a): [number, number] => [along(a.sale.price), row(a)]) },
      { kind: 'points', points: adjusted(all.filter((a) => !apart.has(a.number))) },
      { kind: 'points', points: adjusted(all.filter((a) => apart.has(a.number))), strong: true },
    ],
    notes: all.map((a) => ({
      at: [along(a.price), row(a)] as [number, number],
      words: words(a),
      side: side(a),
    })),
  });
}
