import { type Money, moneyText } from '../core/money.ts';
import type { Judgement } from '../core/verdict.ts';
import { dayText } from '../core/working.ts';
import { shareText } from './adjustment.ts';
import {
  type Adjusted,
  adjustAll,
  counted,
  fewestForOutliers,
  outlierLimit,
  weightsOf,
} from './comparable-sales-grid.ts';
import type { Inputs } from './comparable-sales-inputs.ts';
import { greatest, least, mean, median, modifiedZ, quantile, weightedMean } from './decimal-statistics.ts';
import { downToStep, marketStep, toStep, upToStep } from './rounding.ts';

/** The sales with all that follows from them. */
export interface Assessment {
  all: readonly Adjusted[];
  used: readonly Adjusted[];
  prices: readonly Money[];
  /** Modified z-scores of those used; none when too few to tell. */
  z: readonly Money[];
  /** Nothing when too few sales count. */
  conclusion: Conclusion | undefined;
}

interface Conclusion {
  /** In per cent, of those used; none for a median or plain mean. */
  weights: readonly Money[] | undefined;
  indicated: Money;
  step: Money;
  value: Money;
  low: Money;
  high: Money;
}

/** Spread of amounts in per cent of their median. */
export const spreadOf = (prices: readonly Money[]): Money =>
  greatest(prices).sub(least(prices)).mul(100).div(median(prices));

/** Enough sales for quartiles and outliers. */
export const many = (used: readonly Adjusted[]): boolean => used.length >= fewestForOutliers;

/** Carries the sales over and draws what can be drawn from them. */
export function assess(v: Inputs): Assessment {
  const all = adjustAll(v);
  const used = counted(all);
  const prices = used.map((a) => a.price);
  const conclusion = used.length < v.fewestSales ? undefined : conclusionOf(used, prices, v);
  return { all, used, prices, z: many(used) ? modifiedZ(prices) : [], conclusion };
}

function conclusionOf(used: readonly Adjusted[], prices: readonly Money[], v: Inputs): Conclusion {
  const weights = weightsOf(used, v.method);
  const plain = v.method === 'mean' ? mean : median;
  const indicated = weights ? weightedMean(prices, weights) : plain(prices);
  const step = v.step ?? marketStep(indicated);
  const value = toStep(indicated, step);
  const from = many(used) ? quantile(prices, 0.25) : least(prices);
  const to = many(used) ? quantile(prices, 0.75) : greatest(prices);
  return {
    weights,
    indicated,
    step,
    value,
    low: downToStep(least([from, value]), step),
    high: upToStep(greatest([to, value]), step),
  };
}

/** What the sales say of the value. */
export function judge({ used, prices, z, conclusion: c }: Assessment, v: Inputs): Judgement[] {
  const text = (value: Money) => moneyText(value, v.currency);
  if (!c) {
    const sales = `${used.length} ${used.length === 1 ? 'sale counts' : 'sales count'}`;
    const reason = `${sales}; at least ${v.fewestSales} are needed to tell a value.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  const spread = spreadOf(prices);
  const judgements: Judgement[] = [];
  const attention = (reason: string) => judgements.push({ verdict: 'attention', reason });
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
  if (spread.gt(v.spreadLimit.in('%'))) {
    attention(
      `Adjusted prices spread over ${shareText(spread)} of their median, more than ${v.spreadLimit.text()}: the market or the adjustments are not yet understood.`,
    );
  }
  if (used.every((a) => a.sale.basis === 'asking')) {
    attention('Only asking prices count: nothing shows yet what a buyer pays.');
  }
  if (judgements.length === 0) {
    const reason = `${used.length} sales agree within ${shareText(spread)} of their median: ${text(c.value)}, between ${text(c.low)} and ${text(c.high)}.`;
    judgements.push({ verdict: 'satisfactory', reason });
  }
  return judgements;
}
