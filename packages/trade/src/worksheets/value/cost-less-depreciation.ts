import { choice, fallback, measure, optional, words } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import { currency, Money, money, moneyText } from '../core/money.ts';
import { amount, measured, type ResultTable } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type InputProblem, type Values } from '../core/worksheet.ts';
import { shareText } from './adjustment.ts';
import { sum } from './decimal-statistics.ts';
import { marketStep, toStep } from './rounding.ts';

const inputs = {
  currency: currency(),
  method: choice({
    label: 'Wear is counted',
    choices: { straight: 'Straight: the same each year', declining: 'Declining: the same share each year' },
  }),
  parts: rows({
    label: 'Parts of the boat',
    help: 'Hull, engines, rig, electronics: what ages apart is counted apart',
    each: 'part',
    max: 30,
    columns: {
      part: words({ label: 'Part', max: 60 }),
      costNew: money({ label: 'Cost new today', min: 0.01 }),
      curable: optional(money({ label: 'Cost to put right what can be', min: 0 })),
      effectiveAge: measure({
        label: 'Effective age',
        help: 'By her condition, as if the curable were put right',
        unit: 'year',
        units: ['month'],
        min: 0,
        max: 200,
      }),
      remainingLife: optional(
        measure({ label: 'Life left', unit: 'year', units: ['month'], min: 0, max: 200 }),
      ),
      rate: optional(measure({ label: 'Lost each year', unit: '%', min: 0, max: 99 })),
    },
  }),
  functional: fallback(
    money({
      label: 'Functional obsolescence',
      help: 'What the market takes off for layout, size of engines, out-of-date gear',
      min: 0,
    }),
    0,
  ),
  external: fallback(
    money({ label: 'External obsolescence', help: 'What it takes off for causes outside the boat', min: 0 }),
    0,
  ),
  added: fallback(
    money({
      label: 'Worth of what is not depreciated',
      help: 'Trailer, tender, berth, at their worth',
      min: 0,
    }),
    0,
  ),
  weakBeyond: fallback(
    measure({ label: 'Depreciation beyond which cost tells little', unit: '%', min: 1, max: 100 }),
    75,
  ),
  step: optional(
    money({ label: 'Rounded to', help: 'The step this market quotes in; found from the value', min: 0.01 }),
  ),
};

type Inputs = Values<typeof inputs>;
type Part = Inputs['parts'][number];
type Method = Inputs['method'];

/** The share of its cost that a part has worn, 0 to 1; undefined where its life or rate isn't given. */
export function wornShare(part: Part, method: Method): Money | undefined {
  const age = new Money(part.effectiveAge.in('year'));
  if (method === 'straight') {
    const life = part.remainingLife && age.add(part.remainingLife.in('year'));
    return life && !life.isZero() ? age.div(life) : undefined;
  }
  return part.rate && new Money(1).sub(new Money(1).sub(new Money(part.rate.in('%')).div(100)).pow(age));
}

const curableOf = (part: Part): Money => part.curable ?? new Money(0);
const wearable = (part: Part): Money => part.costNew.sub(curableOf(part));
const incurableOf = (part: Part, method: Method): Money => wearable(part).mul(wornShare(part, method) ?? 0);

/** All amounts of the computation by one method: the curable first, the age share on what remains. */
function workOut(v: Inputs, method: Method) {
  const costNew = sum(v.parts.map((p) => p.costNew));
  const curable = sum(v.parts.map(curableOf));
  const incurable = sum(v.parts.map((p) => incurableOf(p, method)));
  const depreciation = sum([curable, incurable, v.functional, v.external]);
  const left = costNew.sub(depreciation);
  return { costNew, curable, incurable, depreciation, left, indicated: left.add(v.added) };
}

/** What the method not chosen would give, where its lives or rates are given too. */
function byOtherMethod(v: Inputs): Money | null {
  const other: Method = v.method === 'straight' ? 'declining' : 'straight';
  return v.parts.every((p) => wornShare(p, other)) ? workOut(v, other).indicated : null;
}

function refuse(v: Inputs): InputProblem[] {
  const problems: InputProblem[] = [];
  for (const [i, part] of v.parts.entries()) {
    const at = (field: string, message: string) =>
      problems.push({ field: `parts/${i}/${field}`, message: `${part.part}: ${message}` });
    if (curableOf(part).gt(part.costNew)) {
      at('curable', 'putting right costs more than the part new; count it as worn out or replace it.');
    }
    if (v.method === 'declining' && !part.rate) at('rate', 'give what it loses each year.');
    if (v.method === 'straight') {
      if (!part.remainingLife) at('remainingLife', 'give the years of life left.');
      else if (!wornShare(part, 'straight')) {
        at('remainingLife', 'age and life left can’t both be nothing.');
      }
    }
  }
  if (problems.length === 0 && workOut(v, v.method).left.isNegative()) {
    const message =
      'Wear and obsolescence come to more than the cost new; no obsolescence can take more than is left.';
    problems.push({ field: 'external', message });
  }
  return problems;
}

function judge(v: Inputs, method: Method): Judgement[] {
  const w = workOut(v, method);
  const share = w.depreciation.mul(100).div(w.costNew);
  const judgements: Judgement[] = [];
  if (share.gt(v.weakBeyond.in('%'))) {
    const reason = `${shareText(share)} of the cost new is depreciated, more than ${v.weakBeyond.text()}: at this age cost tells little of what a buyer pays.`;
    judgements.push({ verdict: 'attention', reason });
  }
  for (const part of v.parts) {
    if (method === 'straight' && part.remainingLife?.value === 0) {
      judgements.push({ verdict: 'attention', reason: `${part.part} is at the end of its life.` });
    }
  }
  if (judgements.length === 0) {
    const reason = `Cost new ${moneyText(w.costNew, v.currency)} less ${shareText(share)} depreciation${v.added.isZero() ? '' : ', and what is not depreciated,'} gives ${moneyText(w.indicated, v.currency)}.`;
    judgements.push({ verdict: 'satisfactory', reason });
  }
  const other = byOtherMethod(v);
  if (other) {
    const reason = `Counted ${v.method === 'straight' ? 'declining' : 'straight'} it would be ${moneyText(other, v.currency)}.`;
    judgements.push({ verdict: 'satisfactory', reason });
  }
  return judgements;
}

const plain = (value: Money) => moneyText(value, '').trim();

function partsTable(v: Inputs): ResultTable {
  return {
    title: `Parts, ${v.currency}`,
    columns: ['Part', 'Cost new', 'Curable', 'Worn', 'Incurable', 'Left'],
    rows: v.parts.map((p) => [
      p.part,
      plain(p.costNew),
      plain(curableOf(p)),
      shareText((wornShare(p, v.method) ?? new Money(0)).mul(100)),
      plain(incurableOf(p, v.method)),
      plain(wearable(p).sub(incurableOf(p, v.method))),
    ]),
  };
}

function workingOf(v: Inputs): string[] {
  const w = workOut(v, v.method);
  const years = (part: Part) => formatNumber(part.effectiveAge.in('year'), 4);
  const perPart = v.parts.flatMap((p) => {
    const left = formatNumber(p.remainingLife?.in('year') ?? 0, 4);
    const share = shareText((wornShare(p, v.method) ?? new Money(0)).mul(100), 2);
    return [
      v.method === 'straight'
        ? line(`${p.part}, worn`, 'age / (age + life left)', `${years(p)} / (${years(p)} + ${left})`, share)
        : line(`${p.part}, worn`, '1 − (1 − rate) ^ age', `1 − (1 − ${p.rate?.text()}) ^ ${years(p)}`, share),
      line(
        `${p.part}, incurable`,
        '(cost new − curable) × worn',
        `(${plain(p.costNew)} − ${plain(curableOf(p))}) × ${share}`,
        plain(incurableOf(p, v.method)),
      ),
    ];
  });
  return [
    ...perPart,
    line(
      'Depreciation',
      'curable + incurable + functional + external',
      `${plain(w.curable)} + ${plain(w.incurable)} + ${plain(v.functional)} + ${plain(v.external)}`,
      plain(w.depreciation),
    ),
    line(
      'Value',
      'cost new − depreciation + what is not depreciated',
      `${plain(w.costNew)} − ${plain(w.depreciation)} + ${plain(v.added)}`,
      moneyText(w.indicated, v.currency),
    ),
  ];
}

/** Value as cost new less what age, defects and the market have taken. */
export const costLessDepreciation = defineWorksheet({
  kind: 'cost-less-depreciation',
  version: 1,
  title: 'Value by cost less depreciation',
  group: 'value',
  system: 'hull',
  purpose:
    'Takes from the cost new of each part first what would put it right, then its share of age on the rest, then obsolescence.',
  inputs,
  refuse,
  applicability:
    'Boats whose cost new today is known, best young or one-off ones. The older the boat, the less cost tells of her price.',
  compute: (v) => {
    const w = workOut(v, v.method);
    const other = v.method === 'straight' ? 'declining' : 'straight';
    const money = (label: string, value: Money | null) => amount(label, value, v.currency);
    return {
      outputs: {
        value: money('Value', toStep(w.indicated, v.step ?? marketStep(w.indicated))),
        indicated: money('Before rounding', w.indicated),
        costNew: money('Cost new', w.costNew),
        curable: money('Curable depreciation', w.curable),
        incurable: money('Incurable depreciation', w.incurable),
        obsolescence: money('Obsolescence', v.functional.add(v.external)),
        depreciation: money('Depreciation in all', w.depreciation),
        depreciated: measured('Share depreciated', w.depreciation.mul(100).div(w.costNew).toNumber(), '%', {
          digits: 4,
        }),
        otherMethod: money(`Before rounding, counted ${other}`, byOtherMethod(v)),
      },
      ...conclude(judge(v, v.method)),
      tables: [partsTable(v)],
      working: workingOf(v),
    };
  },
  cautions: [
    'Cost is not price: it sets a value only where the market would rather build. Weigh it against sales before giving a value.',
    'Effective age, life left and yearly rates are the surveyor’s judgement; say in the report what they rest on.',
    'Costs new and costs to put right should come from a builder’s, maker’s or yard’s quotation of known date.',
  ],
  sources: [
    {
      citation: 'Age-life: depreciation = cost new × effective age / (effective age + remaining life)',
      standing: 'secondary',
      note: 'georgiaappraiser.com, age-life depreciation; appraisersforum.com thread 170531',
    },
    {
      citation:
        'Modified age-life: the curable taken off first, the age share on what remains, and both together',
      standing: 'secondary',
      note: 'georgiaappraiser.com, whose example prints 80,000 where 240,000 × 25% is 60,000; this worksheet follows the formula',
    },
    {
      citation: 'Declining: what is left = cost new × (1 − rate) ^ years',
      standing: 'secondary',
      note: 'declining-balance table, calculattor.com. Rates of 5 to 8% a year for boats are common practice, no source; hull and engines apart',
    },
    {
      citation: 'Depreciation beyond which cost tells little; rounding steps',
      standing: 'practice',
      note: 'common practice, no source; the firm may set its own',
    },
  ],
});
