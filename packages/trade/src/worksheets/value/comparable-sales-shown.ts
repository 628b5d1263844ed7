import { type Money, moneyText } from '../core/money.ts';
import type { ResultTable } from '../core/outputs.ts';
import { line } from '../core/working.ts';
import { shareText } from './adjustment.ts';
import { type Assessment, many, spreadOf } from './comparable-sales-conclusion.ts';
import { type Adjusted, elements } from './comparable-sales-grid.ts';
import type { Inputs } from './comparable-sales-inputs.ts';
import { medianAbsoluteDeviation } from './decimal-statistics.ts';

/** The grid of adjustments as a table, the sales left out among them. */
export function gridTable({ all, used, z, conclusion }: Assessment, v: Inputs): ResultTable {
  const plain = (value: Money) => moneyText(value, '').trim();
  const weights = conclusion?.weights;
  const shown = (Object.keys(elements) as Array<keyof typeof elements>).filter((key) =>
    all.some((a) => a.steps.some((s) => s.key === key)),
  );
  return {
    title: `Adjustments, ${v.currency}`,
    columns: [
      'Boat',
      'Price',
      ...shown.map((key) => elements[key].replace(/^./, (c) => c.toUpperCase())),
      'Adjusted',
      'Net',
      'Gross',
      ...(weights ? ['Weight'] : []),
      ...(z.length > 0 ? ['Modified z'] : []),
    ],
    rows: all.map((a) => {
      const place = used.indexOf(a);
      return [
        `${a.number} ${a.sale.boat}${place < 0 ? ` (left out: ${a.sale.leftOut})` : ''}`,
        plain(a.sale.price),
        ...shown.map((key) => {
          const change = a.steps.find((s) => s.key === key)?.amount;
          return change ? `${change.gt(0) ? '+' : ''}${plain(change)}` : '–';
        }),
        plain(a.price),
        shareText(a.net),
        shareText(a.gross),
        ...(weights ? [place < 0 ? '–' : shareText(weights[place] ?? weights[0] ?? a.net)] : []),
        ...(z.length > 0 ? [z[place]?.toFixed(2).replace('-', '−') ?? '–'] : []),
      ];
    }),
  };
}

/** The value as worked on paper, sale by sale; no value where too few count. */
export function workingOf({ all, used, prices, conclusion: c }: Assessment, v: Inputs): string[] {
  const plain = (value: Money) => moneyText(value, '').trim();
  const changes = (a: Adjusted) =>
    a.steps
      .map((s) => ` ${s.amount.isNegative() ? '−' : '+'} ${elements[s.key]} ${plain(s.amount.abs())}`)
      .join('');
  const lines = all.map((a) =>
    line(`${a.number} ${a.sale.boat}`, `${plain(a.sale.price)}${changes(a)}`, moneyText(a.price, v.currency)),
  );
  if (!c) return lines;
  const mad = medianAbsoluteDeviation(prices);
  const taken = c.weights
    ? line(
        'Weighted',
        used.map((a, i) => `${plain(a.price)} × ${shareText(c.weights?.[i] ?? a.net)}`).join(' + '),
        plain(c.indicated),
      )
    : line(v.method === 'mean' ? 'Mean' : 'Median', plain(c.indicated));
  return [
    ...lines,
    line('Spread', '(highest − lowest) / median', shareText(spreadOf(prices))),
    ...(many(used) && !mad.isZero()
      ? [line('Modified z', '0.6745 · (price − median) / MAD', `MAD ${plain(mad)}`)]
      : []),
    taken,
    line('Value', `${plain(c.indicated)} to the nearest ${plain(c.step)}`, moneyText(c.value, v.currency)),
    line(
      'Range',
      many(used) ? 'lower to upper quartile, outward to the step' : 'lowest to highest, outward to the step',
      `${plain(c.low)} to ${plain(c.high)}`,
    ),
  ];
}
