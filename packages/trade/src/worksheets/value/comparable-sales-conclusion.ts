import { type Money, moneyText } from '../core/money.ts';
import type { Judgement } from '../core/verdict.ts';
import { dayText } from '../core/working.ts';
import { shareText } from './adjustment.ts';
import {
  type Adjusted,
  fewestForOutliers,
  outlierLimit,
  scores,
  weightsOf,
} from './comparable-sales-grid.ts';
import type { Inputs } from './comparable-sales-inputs.ts';
import { greatest, least, mean, median, quantile, weightedMean } from './decimal-statistics.ts';
import { downToStep, marketStep, toStep, upToStep } from './rounding.ts';

/** Value and range from the counted sales, before and after rounding. */
export function conclusion(used: readonly Adjusted[], v: Inputs) {
  const prices = used.map((a) => a.price);
  const weights = weightsOf(used, v.method);
  const indicated = weights
    ? weightedMean(prices, weights)
    : v.method === 'mean'
      ? mean(prices)
      : median(prices);
  const step = v.step ?? marketStep(indicated);
  const many = used.length >= fewestForOutliers;
  const from = many ? quantile(prices, 0.25) : least(prices);
  const to = many ? quantile(prices, 0.75) : greatest(prices);
  const value = toStep(indicated, step);
  return {
    weights,
    indicated,
    step,
    many,
    value,
    low: downToStep(least([from, value]), step),
    high: upToStep(greatest([to, value]), step),
    spread: greatest(prices).sub(least(prices)).mul(100).div(median(prices)),
  };
}

export function judge(used: readonly Adjusted[], v: Inputs): Judgement[] {
  const text = (value: Money) => moneyText(value, v.currency);
  if (used.length < v.fewestSales) {
    const sales = `${used.length} ${used.length === 1 ? 'sale counts' : 'sales count'}`;
    const reason = `${sales}; at least ${v.fewestSales} are needed to tell a value.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  const c = conclusion(used, v);
  const judgements: Judgement[] = [];
  const attention = (reason: string) => judgements.push({ verdict: 'attention', reason });
  const z = scores(used);
  for (const [i, a] of used.entries()) {
    const score = z[i];
    if (score?.abs().gt(outlierLimit)) {
      attention(
        `${a.sale.boat} at ${text(a.price)} stands apart from the others (modified z ${score.toFixed(1).replace('-', '−')}, limit ${outlierLimit}): find out why, or leave it out with the reason.`,
      );
    }
    if (a.gross.gt(v.grossLimit.in('%'))) {
      attention(
        `${a.sale.boat} needed adjustments of ${shareText(a.gross)} of its price, more than ${v.grossLimit.text()}: it is hardly comparable.`,
      );
    }
    if (a.sale.date > v.valueOn) {
      attention(`${a.sale.boat} is dated ${dayText(a.sale.date)}, after the date of the value.`);
    }
  }
  if (c.spread.gt(v.spreadLimit.in('%'))) {
    attention(
      `Adjusted prices spread over ${shareText(c.spread)} of their median, more than ${v.spreadLimit.text()}: the market or the adjustments are not yet understood.`,
    );
  }
  if (used.every((a) => a.sale.basis === 'asking')) {
    attention('Only asking prices count: nothing shows yet what a buyer pays.');
  }
  if (judgements.length === 0) {
    const reason = `${used.length} sales agree within ${shareText(c.spread)} of their median: ${text(c.value)}, between ${text(c.low)} and ${text(c.high)}.`;
    judgements.push({ verdict: 'satisfactory', reason });
  }
  return judgements;
}
