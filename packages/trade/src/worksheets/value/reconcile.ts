import { choice, day, fallback, measure, optional, words } from '../core/fields.ts';
import { currency, Money, money, moneyText } from '../core/money.ts';
import { amount, measured, number, type ResultTable } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { line } from '../core/working.ts';
import { defineWorksheet, type InputProblem, type Values } from '../core/worksheet.ts';
import { shareText } from './adjustment.ts';
import { greatest, least, mean, sum, weightedMean } from './decimal-statistics.ts';
import { downToStep, marketStep, toStep, upToStep } from './rounding.ts';

const approachNames = {
  sales: 'Comparable sales',
  cost: 'Cost less depreciation',
  income: 'Income',
} as const;
type Approach = keyof typeof approachNames;
const approaches = Object.keys(approachNames) as Approach[];

const valueBy = (approach: Approach, help?: string) =>
  optional(money({ label: `${approachNames[approach]}: value`, min: 1, ...(help ? { help } : {}) }));
const weightOf = (approach: Approach) =>
  optional(measure({ label: `${approachNames[approach]}: weight`, unit: '%', min: 0, max: 100 }));
const reasonFor = (approach: Approach) =>
  words({
    label: `${approachNames[approach]}: why so weighed, or why not used`,
    help: 'The amount and quality of its evidence; an approach not used needs its reason too',
    max: 600,
  });

const inputs = {
  currency: currency(),
  valueOn: day({ label: 'Date of the value' }),
  kindOfValue: choice({
    label: 'Value sought',
    choices: {
      market: 'Market value',
      insurable: 'Value to be insured',
      replacement: 'Cost of a like boat',
      'forced-sale': 'Value in a forced sale',
    },
  }),
  salesValue: valueBy('sales'),
  salesWeight: weightOf('sales'),
  salesReason: reasonFor('sales'),
  costValue: valueBy('cost'),
  costWeight: weightOf('cost'),
  costReason: reasonFor('cost'),
  incomeValue: valueBy('income', 'For boats that earn: hire, charter, work'),
  incomeWeight: weightOf('income'),
  incomeReason: reasonFor('income'),
  agreement: fallback(
    measure({ label: 'Widest difference taken as agreement', unit: '%', min: 1, max: 100 }),
    15,
  ),
  leastRange: fallback(measure({ label: 'Least range either side', unit: '%', min: 0, max: 50 }), 5),
  step: optional(
    money({ label: 'Rounded to', help: 'The step this market quotes in; found from the value', min: 0.01 }),
  ),
};

type Inputs = Values<typeof inputs>;

/** One approach as given. */
const given = (v: Inputs, approach: Approach) => ({
  approach,
  name: approachNames[approach],
  value: v[`${approach}Value`],
  weight: v[`${approach}Weight`] && new Money(v[`${approach}Weight`]?.in('%') ?? 0),
  reason: v[`${approach}Reason`],
});

/** The approaches that carry weight. */
const weighed = (v: Inputs) =>
  approaches.flatMap((approach) => {
    const { value, weight, name } = given(v, approach);
    return value && weight?.gt(0) ? [{ approach, name, value, weight }] : [];
  });

/** Shorter than this is no reason. */
const shortestReason = 10;

function refuse(v: Inputs): InputProblem[] {
  const problems: InputProblem[] = [];
  for (const approach of approaches) {
    const { value, weight, reason, name } = given(v, approach);
    if (value && !weight) {
      const message = `${name} has a value and no weight: give one, 0 if it isn’t relied on.`;
      problems.push({ field: `${approach}Weight`, message });
    }
    if (weight?.gt(0) && !value) {
      problems.push({
        field: `${approach}Value`,
        message: `${name} has a weight and no value: give its value.`,
      });
    }
    if (reason.length < shortestReason) {
      const message = value
        ? `${name}: say in a sentence why it weighs what it does.`
        : `${name} isn’t used: say in a sentence why not.`;
      problems.push({ field: `${approach}Reason`, message });
    }
  }
  const total = sum(approaches.map((approach) => given(v, approach).weight ?? new Money(0)));
  if (problems.length === 0 && !total.eq(100)) {
    const field = weighed(v)[0]?.approach ?? 'sales';
    const message = `The weights must add up to 100%; they add up to ${shareText(total, 4)}.`;
    problems.push({ field: `${field}Weight`, message });
  }
  return problems;
}

function conclusion(v: Inputs) {
  const used = weighed(v);
  const values = used.map((a) => a.value);
  const indicated = weightedMean(
    values,
    used.map((a) => a.weight),
  );
  const step = v.step ?? marketStep(indicated);
  const value = toStep(indicated, step);
  const reach = indicated.mul(v.leastRange.in('%')).div(100);
  return {
    used,
    indicated,
    step,
    value,
    low: downToStep(least([...values, indicated.sub(reach)]), step),
    high: upToStep(greatest([...values, indicated.add(reach)]), step),
    spread: greatest(values).sub(least(values)).mul(100).div(indicated),
  };
}

function judge(v: Inputs): Judgement[] {
  const { used, indicated, spread, value, low, high } = conclusion(v);
  const text = (sum: Money) => moneyText(sum, v.currency);
  const judgements: Judgement[] = [];
  const attention = (reason: string) => judgements.push({ verdict: 'attention', reason });
  if (spread.gt(v.agreement.in('%'))) {
    attention(
      `The approaches differ by ${shareText(spread)}, more than ${v.agreement.text()}: find out which rests on the weaker evidence before weighing them.`,
    );
  }
  const [first, ...others] = used;
  if (others.length > 0 && others.every((a) => first && a.weight.sub(first.weight).abs().lt('0.1'))) {
    attention('All weights are equal: that is an average, right only where the evidence is equally good.');
  }
  for (const approach of approaches) {
    const { value: unused, weight, name } = given(v, approach);
    if (!unused || !weight?.isZero()) continue;
    const off = unused.sub(indicated).abs().mul(100).div(indicated);
    if (off.gt(v.agreement.in('%'))) {
      attention(
        `${name} carries no weight and lies ${shareText(off)} from the value: its reason should say why.`,
      );
    }
  }
  if (judgements.length === 0) {
    const agree =
      used.length === 1
        ? `Rests on ${first?.name.toLowerCase()} alone; why the others aren’t relied on is stated`
        : `${used.length} approaches agree within ${shareText(spread)}`;
    judgements.push({
      verdict: 'satisfactory',
      reason: `${agree}: ${text(value)}, between ${text(low)} and ${text(high)}.`,
    });
  }
  return judgements;
}

const plain = (value: Money) => moneyText(value, '').trim();
const part = (value: Money, weight: Money) => value.mul(weight).div(100);

const approachTable = (v: Inputs): ResultTable => ({
  title: `Approaches, ${v.currency}`,
  columns: ['Approach', 'Value', 'Weight', 'Part', 'Reason'],
  rows: approaches.map((approach) => {
    const { name, value, weight, reason } = given(v, approach);
    return value && weight
      ? [name, plain(value), shareText(weight), plain(part(value, weight)), reason]
      : [name, 'not used', '–', '–', reason];
  }),
});

function workingOf(v: Inputs): string[] {
  const { used, indicated, value, step, spread, low, high } = conclusion(v);
  return [
    line(
      'Weighed',
      'Σ value × weight',
      used.map((a) => `${plain(a.value)} × ${shareText(a.weight, 2)}`).join(' + '),
      plain(indicated),
    ),
    line('Difference', '(highest − lowest) / weighed', shareText(spread)),
    line('Value', `${plain(indicated)} to the nearest ${plain(step)}`, moneyText(value, v.currency)),
    line(
      'Range',
      `the approaches, and at least ${v.leastRange.text()} either side, outward to the step`,
      `${plain(low)} to ${plain(high)}`,
    ),
  ];
}

/** One value from the approaches, by weights with their reasons. */
export const reconcile = defineWorksheet({
  kind: 'reconcile',
  version: 1,
  title: 'Approaches reconciled',
  group: 'value',
  system: 'hull',
  purpose:
    'Weighs the values found by sales, cost and income by the evidence behind each, with a reason for every weight and for every approach not used.',
  inputs,
  refuse,
  applicability:
    'Values of the same kind at the same date in the same currency. Weights express the evidence; they are judgement, not arithmetic.',
  compute: (v) => {
    const c = conclusion(v);
    const money = (label: string, value: Money | null) => amount(label, value, v.currency);
    const parts = new Map(c.used.map((a) => [a.approach, part(a.value, a.weight)]));
    return {
      outputs: {
        value: money('Value', c.value),
        low: money('Range from', c.low),
        high: money('Range to', c.high),
        indicated: money('Before rounding', c.indicated),
        salesPart: money('Part from comparable sales', parts.get('sales') ?? null),
        costPart: money('Part from cost', parts.get('cost') ?? null),
        incomePart: money('Part from income', parts.get('income') ?? null),
        plainAverage: money('Average without weights, for comparison', mean(c.used.map((a) => a.value))),
        spread: measured('Difference between approaches', c.spread.toNumber(), '%'),
        used: number('Approaches that carry weight', c.used.length),
      },
      ...conclude(judge(v)),
      tables: [approachTable(v)],
      working: workingOf(v),
    };
  },
  cautions: [
    'An opinion of value at the date named, for the survey’s stated use and user; it is not a promise of price.',
    'State with it what was assumed and not examined, and that the valuer has no interest in the boat or the deal.',
    'Whether a valuation may be given, and in what form, is ruled by the appraisal standards and law that bind the valuer.',
  ],
  sources: [
    {
      citation:
        'Approaches weighed by their evidence, weights adding up to 100%; rounding to figures the market uses',
      standing: 'secondary',
      note: 'Clarion University, RE 470, chapter 5; jsabtconsulting.com, reconciliation',
    },
    {
      citation: 'An approach not used is explained; weighing, not averaging; date and kind of value stated',
      standing: 'memory',
      note: 'general appraisal practice, from memory; the standards themselves are not reproduced',
    },
    {
      citation: 'Widest difference taken as agreement, least range either side, rounding steps',
      standing: 'practice',
      note: 'common practice, no source; the firm may set its own',
    },
  ],
});
