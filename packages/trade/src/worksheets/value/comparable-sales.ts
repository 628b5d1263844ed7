import type { Money } from '../core/money.ts';
import { amount, measured, number } from '../core/outputs.ts';
import { conclude } from '../core/verdict.ts';
import { defineWorksheet, type InputProblem } from '../core/worksheet.ts';
import { shareText } from './adjustment.ts';
import { assess, judge, spreadOf } from './comparable-sales-conclusion.ts';
import { spreadDrawing } from './comparable-sales-drawing.ts';
import { adjustAll, counted, outlierLimit, weightsOf } from './comparable-sales-grid.ts';
import { type Inputs, inputs } from './comparable-sales-inputs.ts';
import { gridTable, workingOf } from './comparable-sales-shown.ts';
import { greatest, least, mean, median, medianAbsoluteDeviation, sum } from './decimal-statistics.ts';

function refuse(v: Inputs): InputProblem[] {
  const problems: InputProblem[] = [];
  const at = (i: number, field: string, message: string) =>
    problems.push({ field: `sales/${i}/${field}`, message: `Comparable sales, row ${i + 1}: ${message}` });
  for (const [i, sale] of v.sales.entries()) {
    if (sale.basis === 'asking' && !v.askingGap && problems.every((p) => p.field !== 'askingGap')) {
      problems.push({
        field: 'askingGap',
        message: `${sale.boat} has an asking price: say what is taken off asking prices (0 for nothing).`,
      });
    }
    if (sale.weight && v.method !== 'own') {
      at(i, 'weight', 'a weight is given; choose the weights given with each sale, or leave it out.');
    } else if (sale.weight && sale.leftOut) {
      at(i, 'weight', 'a sale that is left out has no weight.');
    }
  }
  for (const a of adjustAll(v)) {
    if (!a.price.gt(0)) {
      at(a.number - 1, 'price', 'the adjustments take away the whole price; such a boat is no comparison.');
    }
  }
  const weights = v.method === 'own' ? weightsOf(counted(adjustAll(v)), v.method) : undefined;
  if (weights?.length && !sum(weights).eq(100)) {
    const message = `The weights of the sales must add up to 100%; they add up to ${shareText(sum(weights), 4)}.`;
    problems.push({ field: 'sales', message });
  }
  return problems;
}

/** Value from what like boats sold for, each carried to the boat surveyed. */
export const comparableSales = defineWorksheet({
  kind: 'comparable-sales',
  version: 1,
  title: 'Value by comparable sales',
  group: 'value',
  system: 'hull',
  purpose:
    'Carries the prices of like boats to the boat surveyed and the date of the value, shows how far they agree, and gives a value with its range.',
  inputs,
  refuse,
  applicability:
    'Sales of like boats in the same market, known by date and terms. With fewer than seven, no sale can be told to be an outlier.',
  compute: (v) => {
    const assessed = assess(v);
    const { used, prices, z, conclusion: c } = assessed;
    const of = (statistic: (amounts: readonly Money[]) => Money) =>
      prices.length > 0 ? statistic(prices) : null;
    const outliers = z.filter((score) => score.abs().gt(outlierLimit)).length;
    return {
      outputs: {
        value: amount('Value', c?.value ?? null, v.currency),
        low: amount('Range from', c?.low ?? null, v.currency),
        high: amount('Range to', c?.high ?? null, v.currency),
        indicated: amount('Before rounding', c?.indicated ?? null, v.currency),
        median: amount('Median of the adjusted prices', of(median), v.currency),
        mean: amount('Mean of the adjusted prices', of(mean), v.currency),
        lowest: amount('Lowest', of(least), v.currency),
        highest: amount('Highest', of(greatest), v.currency),
        deviation: amount('Median absolute deviation', of(medianAbsoluteDeviation), v.currency),
        spread: measured('Spread of the median', c ? spreadOf(prices).toNumber() : null, '%'),
        salesUsed: number('Sales that count', used.length),
        outliers: number('Outliers among them', z.length > 0 ? outliers : null),
        farthest: number(
          'Largest modified z, either way',
          z.length > 0 ? greatest(z.map((s) => s.abs())).toNumber() : null,
          6,
        ),
      },
      ...conclude(judge(assessed, v)),
      tables: [gridTable(assessed, v)],
      working: workingOf(assessed, v),
    };
  },
  draw: (v) => [spreadDrawing(assess(v), v.currency)],
  cautions: [
    'An opinion of value on the evidence named, at the date named, for the survey’s stated use. It is not a promise of price, and markets move.',
    'Verify each price with someone who was party to the sale: listings, and reports of what a boat “went for”, are often wrong.',
    'Whether a valuation may be given, and in what form, is ruled by the appraisal standards and law that bind the valuer.',
  ],
  sources: [
    {
      citation:
        'Order of adjustments: what belongs to the deal and its date first, each on the result before; then the property, on that price',
      standing: 'secondary',
      note: 'adjustment grid sequence, lorenzenrealtyadvisors.com, 28 June 2021; list of elements, ketiadaan.com',
    },
    {
      citation: 'Median, mean or weights that sum to 100%, rounded to figures the market uses',
      standing: 'secondary',
      note: 'Clarion University, RE 470, chapter 5',
    },
    {
      citation:
        'Modified z-score 0.6745 (x − median) / MAD, |M| above 3.5 (Iglewicz and Hoaglin, ASQC vol. 16, 1993)',
      standing: 'secondary',
      note: 'with the mean deviation where MAD is zero. Fewer than 7 prices are too few to flag one: our choice',
    },
    {
      citation:
        'Limits of gross adjustment and spread, fewest sales, weights by least adjustment, rounding steps',
      standing: 'practice',
      note: 'common practice, no source; the firm may set its own',
    },
  ],
});
