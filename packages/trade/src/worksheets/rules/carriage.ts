import { number, type ResultTable, said, yes } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { line } from '../core/working.ts';
import { defineWorksheet, type InputProblem } from '../core/worksheet.ts';
import { countExtinguishers, countSignals, extinguishersNeeded, signalsNeeded } from './carriage-count.ts';
import { type Inputs, inputs } from './carriage-inputs.ts';
import { garbagePlanNeeded, lifeSavingNeeded, type Requirement, requirements } from './carriage-items.ts';

const engineless = ['racing', 'sailboard'];

function refuse(v: Inputs): InputProblem[] {
  const problems: InputProblem[] = [];
  if (v.craft === 'motor' && v.engine === 'none') {
    problems.push({ field: 'engine', message: 'A motorboat has an engine: choose which, or another craft.' });
  }
  if (engineless.includes(v.craft) && v.engine !== 'none') {
    problems.push({ field: 'engine', message: 'This craft has no engine: choose none, or another craft.' });
  }
  if (v.engine !== 'none' && v.length.in('ft') > 65) {
    const message = 'Over 65 ft extinguishers go by tonnage and power: give it.';
    if (v.grossTons === undefined) problems.push({ field: 'grossTons', message });
    if (v.mainPower === undefined) problems.push({ field: 'mainPower', message });
  }
  const year = Number(v.surveyedOn.slice(0, 4));
  if (v.modelYear > year + 2) {
    const message = `Model year can’t be later than ${year + 2}; ${v.modelYear} was given.`;
    problems.push({ field: 'modelYear', message });
  }
  for (const [i, e] of v.extinguishers.entries()) {
    if ((e.yearMade ?? 0) > year) {
      const message = `Extinguisher ${i + 1} can’t have been made after the inventory, in ${e.yearMade}.`;
      problems.push({ field: `extinguishers/${i}/yearMade`, message });
    }
  }
  return problems;
}

const noted = (r: Requirement): string => (r.notes.length > 0 ? ` (${r.notes.join('; ')})` : '');

function judge(all: readonly Requirement[], v: Inputs): Judgement[] {
  const judgements = all.flatMap((r): Judgement[] => {
    const asked = `${r.item}: required ${r.required}; ${r.found}${noted(r)}. ${r.rule}.`;
    if (r.state === 'missing') return [{ verdict: 'unsatisfactory', reason: asked }];
    return r.state === 'unknown' ? [{ verdict: 'indeterminate', reason: asked }] : [];
  });
  for (const reason of dates(v)) judgements.push({ verdict: 'attention', reason: `${reason}.` });
  if (v.canTrap === 'not-examined' && v.engine === 'outboard' && v.length.in('ft') < 26) {
    const reason =
      'Whether she can trap gas or vapour wasn’t examined; extinguishers are counted as if she could.';
    judgements.push({ verdict: 'attention', reason });
  }
  if (v.fixedSystem === 'not-examined' && extinguishersNeeded(v).units > 0) {
    const reason =
      'A fixed fire-extinguishing system wasn’t examined; extinguishers are counted as if there were none.';
    judgements.push({ verdict: 'attention', reason });
  }
  if (judgements.length === 0) {
    const reason = `All ${all.length} items that federal rules ask of her are on board.`;
    judgements.push({ verdict: 'satisfactory', reason });
  }
  return judgements;
}

/** Dates near enough to warn of, of things that are needed. */
function dates(v: Inputs): string[] {
  const { units, large } = extinguishersNeeded(v);
  const needed = signalsNeeded(v);
  const found = [
    ...(needed.day ? countSignals(v, 'day').soon : []),
    ...(needed.night ? countSignals(v, 'night').soon : []),
    ...(units > 0 ? countExtinguishers(v).soon : []),
    ...(large > 0 ? countExtinguishers(v, true).soon : []),
  ];
  return [...new Set(found)];
}

const stateWords = { met: 'on board', missing: 'missing', unknown: 'not certain' } as const;

const whole = (all: readonly Requirement[]): ResultTable => ({
  title: 'Required',
  columns: ['Item', 'Required', 'Found', 'Result', 'Rule'],
  rows: all.map((r) => [r.item, r.required, r.found + noted(r), stateWords[r.state], r.rule]),
});

const missingTable = (all: readonly Requirement[]): ResultTable => ({
  title: 'Missing, short or out of date',
  columns: ['Item', 'Required', 'Found', 'Rule'],
  rows: all.filter((r) => r.state === 'missing').map((r) => [r.item, r.required, r.found + noted(r), r.rule]),
});

/** United States federal carriage of a recreational boat, against an inventory. */
export const carriage = defineWorksheet({
  kind: 'carriage',
  version: 1,
  title: 'Equipment carried, United States',
  group: 'rules',
  system: 'life-saving',
  purpose:
    'Compares what is on board with what United States federal rules ask of a recreational boat of her kind, length and use, and lists what is missing.',
  inputs,
  refuse,
  applicability:
    'Recreational boats under United States federal rules, up to 164 ft. Not boats for hire or inspected ones, and not State rules. Engine cut-off links, ventilation, radio and numbering are not covered.',
  compute: (v) => {
    const all = requirements(v);
    const missing = all.filter((r) => r.state === 'missing');
    const life = lifeSavingNeeded(v);
    const fire = extinguishersNeeded(v);
    const needed = signalsNeeded(v);
    const signalWords = needed.day ? 'day and night' : needed.night ? 'night' : 'none';
    return {
      outputs: {
        missing: number('Items missing, short or out of date', missing.length),
        uncertain: number('Items not certain', all.filter((r) => r.state === 'unknown').length),
        wearableRequired: number('Life jackets to wear required', life.wearable),
        throwableRequired: number('Throwable devices required', life.throwable),
        signalsRequired: said('Distress signals required for', signalWords.replaceAll(' ', '-'), signalWords),
        daySets: number('Sets of day signals in date', countSignals(v, 'day').sure),
        nightSets: number('Sets of night signals in date', countSignals(v, 'night').sure),
        extinguishersRequired: number('Extinguishers required, as 5-B', fire.units),
        extinguishersCounted: number('Extinguishers that count, as 5-B', countExtinguishers(v).sure),
        largeRequired: number('Extinguishers of 20-B required', fire.large + fire.engineSpace),
        largeCounted: number('Extinguishers of 20-B that count', countExtinguishers(v, true).sure),
        flameControlRequired: yes('Backfire flame control required', v.engine === 'inboard-petrol'),
        oilPlacardRequired: yes(
          'Placard on oil required',
          all.some((r) => r.item === 'Placard on oil'),
        ),
        garbagePlacardRequired: yes(
          'Placard on garbage required',
          all.some((r) => r.item === 'Placard on garbage'),
        ),
        garbagePlanRequired: yes('Garbage management plan required', garbagePlanNeeded(v)),
      },
      ...conclude(judge(all, v)),
      tables: missing.length > 0 ? [missingTable(all), whole(all)] : [whole(all)],
      working: [
        line('Length', `${v.length.to('ft').text(5)} (${v.length.to('m').text(4)})`),
        ...all.map((r) => line(r.item, `required ${r.required}; ${r.found} (${r.rule})`)),
      ],
      ...(v.length.in('ft') > 65 && v.engine !== 'none'
        ? {
            cautions: [
              'Over 65 ft, see that the extinguishers of the engine space hang there; this worksheet counts them together.',
            ],
          }
        : {}),
    };
  },
  cautions: [
    'These are United States federal minimums for recreational boats. State rules, and those of the country visited, add to them and may differ; the law in force on the day governs.',
    'The minimum of the law is not what is safe for the voyage: fit the equipment to the waters, the season and those aboard.',
    'A child under 13 wears a life jacket under way unless below or in an enclosed cabin (33 CFR 175.15(c)), or as State law has it. Each jacket must suit its wearer and be used as its label says.',
    'In waters where discharge is forbidden a toilet must be secured against it (33 CFR 159.7(b), (c)). Never light a signal to try it; hand those out of date in where pyrotechnics are collected.',
  ],
  sources: [
    {
      citation: '33 CFR 175.15, 175.17: life jackets, throwable devices, exemptions',
      standing: 'printed',
      note: 'editions of 2015 and copy to 31 October 2024',
    },
    {
      citation: '33 CFR 175.101 to 175.130: visual distress signals',
      standing: 'printed',
      note: 'edition of 2015. Electric lights to later standards, allowed since, are not listed here: from memory. Racing in an event asks for night signals only',
    },
    {
      citation: '33 CFR 175.320 (numbers, over 65 ft), 175.380, 175.390 (model years)',
      standing: 'printed',
      note: 'text of 2024 to 2026; the numbers of its table as in 46 CFR 25.30-20, edition of 2015, and a newspaper’s print of the new rule',
    },
    {
      citation:
        'Non-rechargeable extinguishers: out of service when older than 12 years, by 31 December of the twelfth year after the stamp',
      standing: 'secondary',
      note: 'US Coast Guard, question 3 on the rule of 20 April 2022, mirrored; DVIDS news 428758. A 10-B counts as one 5-B: secondary',
    },
    {
      citation: '33 CFR 83.01(g), 83.23, 83.25, 83.33: copy of the rules, lights, sound signals',
      standing: 'printed',
      note: 'edition of 2015; Inland Rules, the International ones ask the same lights',
    },
    {
      citation:
        '33 CFR 151.05, 151.51, 151.57, 151.59, 155.450: placards and garbage plan; 159.7: sanitation devices; 46 CFR 25.35-1: flame control',
      standing: 'printed',
      note: 'edition of 2015; compare with the edition in force',
    },
  ],
});
