import type { Check, CheckedWorksheet } from '../../support/check.ts';

const allOnBoard = Object.fromEntries(
  [
    'flameControl',
    'sidelights',
    'sternLight',
    'mastheadLight',
    'allRoundLight',
    'torch',
    'soundSignal',
    'bell',
    'rulesBook',
    'oilPlacard',
    'garbagePlacard',
    'garbagePlan',
    'deviceWorks',
  ].map((key) => [key, 'yes']),
);

/** A boat with everything, of which each check changes what it is about. */
const boat = (changes: Record<string, unknown> = {}) => ({
  surveyedOn: '2026-06-01',
  craft: 'motor',
  engine: 'inboard-other',
  length: 30,
  modelYear: 2020,
  persons: 4,
  waters: 'coastal',
  night: true,
  wearable: 4,
  throwable: 1,
  signals: [{ kind: 'hand-flare', number: 3, expires: '2028-01-31' }],
  extinguishers: [{ rating: '20-B', number: 5, yearMade: 2022, rechargeable: false, good: 'yes' }],
  canTrap: 'yes',
  fixedSystem: 'no',
  toilet: 'none',
  galleyAndBerths: false,
  ...allOnBoard,
  ...changes,
});

const signal = (kind: string, number: number, expires?: string) => ({
  kind,
  number,
  ...(expires ? { expires } : {}),
});
const bottle = (rating: string, number: number, more: Record<string, unknown> = {}) => ({
  rating,
  number,
  yearMade: 2022,
  rechargeable: false,
  good: 'yes',
  ...more,
});

/** 46 CFR 25.30-20 table (a)(1), 2015 edition; 33 CFR 175.320 keeps its numbers: length, without and with a system. */
const byLength: Array<[feet: number, without: number, fixed: number, basis: Check['basis']]> = [
  [12, 1, 0, 'printed'],
  [16, 1, 0, 'edge'],
  [25.9, 1, 0, 'edge'],
  [26, 2, 1, 'edge'],
  [33, 2, 1, 'printed'],
  [39.9, 2, 1, 'edge'],
  [40, 3, 2, 'edge'],
  [52, 3, 2, 'printed'],
  [65, 3, 2, 'edge'],
];

/** Table (b)(1) of the same: gross tons, portable extinguishers. */
const byTonnage: Array<[tons: number, number: number, basis: Check['basis']]> = [
  [50, 1, 'edge'],
  [50.1, 2, 'printed'],
  [100, 2, 'edge'],
  [100.1, 3, 'printed'],
  [500, 3, 'edge'],
  [500.1, 6, 'printed'],
  [1000, 6, 'edge'],
  [1001, 8, 'printed'],
];

/** 33 CFR 175.130(a) and its table: kind, number required, day, night. */
const accepted: Array<[kind: string, number: number, day: number, night: number]> = [
  ['electric-light', 1, 0, 1],
  ['flag', 1, 1, 0],
  ['hand-flare', 3, 1, 1],
  ['floating-smoke', 3, 1, 0],
  ['parachute-flare', 3, 1, 1],
  ['rocket-flare', 3, 1, 1],
  ['hand-smoke', 3, 1, 0],
  ['aerial-flare', 3, 1, 1],
];

const later = '2028-01-31';
const fireTable = '46 CFR 25.30-20, table (a)(1), 2015 edition; 33 CFR 175.320(a) keeps the numbers';
const signalTable = '33 CFR 175.130(a) and table 175.130, 2015 edition';
const jackets = '33 CFR 175.15(a), (b), copy to 31 October 2024';

const tableChecks: Check[] = [
  ...byLength.flatMap(([feet, without, fixed, basis]): Check[] => [
    {
      name: `${feet} ft without a fixed system: ${without}`,
      source: fireTable,
      basis,
      inputs: boat({ length: feet }),
      outputs: { extinguishersRequired: without },
    },
    {
      name: `${feet} ft with a fixed system: ${fixed}`,
      source: fireTable,
      basis,
      inputs: boat({ length: feet, fixedSystem: 'yes' }),
      outputs: { extinguishersRequired: fixed },
    },
  ]),
  ...byTonnage.map(
    ([tons, pieces, basis]): Check => ({
      name: `over 65 ft, ${tons} gross tons: ${pieces}, and 1 for the engines`,
      source: '46 CFR 25.30-20, table (b)(1), 2015 edition; 33 CFR 175.320(b)(2)(i)',
      basis,
      inputs: boat({ length: 120, grossTons: tons, mainPower: 1000 }),
      outputs: { largeRequired: pieces + 1, extinguishersRequired: 0 },
    }),
  ),
  ...accepted.flatMap(([kind, needed, day, night]): Check[] => [
    {
      name: `${needed} × ${kind} is a set by day ${day}, by night ${night}`,
      source: signalTable,
      basis: 'printed',
      inputs: boat({ signals: [signal(kind, needed, later)] }),
      outputs: { daySets: day, nightSets: night },
    },
    ...(needed === 3
      ? [
          {
            name: `2 × ${kind} is none`,
            source: signalTable,
            basis: 'edge' as const,
            inputs: boat({ signals: [signal(kind, 2, later)] }),
            outputs: { daySets: 0, nightSets: 0 },
          },
        ]
      : []),
  ]),
];

const lifeChecks: Check[] = [
  {
    name: '15.9 ft, four persons: four to wear, none to throw',
    source: jackets,
    basis: 'edge',
    inputs: boat({ length: 15.9, throwable: 0 }),
    outputs: { wearableRequired: 4, throwableRequired: 0 },
    verdict: 'satisfactory',
  },
  {
    name: '16.0 ft, four persons: four and one',
    source: jackets,
    basis: 'edge',
    inputs: boat({ length: 16, throwable: 0 }),
    outputs: { wearableRequired: 4, throwableRequired: 1, missing: 1 },
    verdict: 'unsatisfactory',
  },
  {
    name: 'a kayak of 17 ft needs nothing to throw',
    source: '33 CFR 175.17(a), 2015 edition',
    basis: 'printed',
    inputs: boat({ craft: 'canoe', engine: 'none', length: 17, persons: 1, throwable: 0 }),
    outputs: { wearableRequired: 1, throwableRequired: 0 },
    verdict: 'satisfactory',
  },
  {
    name: 'a sailboard needs neither',
    source: '33 CFR 175.17(c), 2015 edition',
    basis: 'printed',
    inputs: boat({ craft: 'sailboard', engine: 'none', length: 9, persons: 1, wearable: 0, throwable: 0 }),
    outputs: { wearableRequired: 0, throwableRequired: 0 },
  },
  {
    name: 'a racing shell of 57 ft needs neither',
    source: '33 CFR 175.17(b), 2015 edition',
    basis: 'printed',
    inputs: boat({ craft: 'racing', engine: 'none', length: 57, persons: 8, wearable: 0, throwable: 0 }),
    outputs: { wearableRequired: 0, throwableRequired: 0 },
  },
  {
    name: 'one jacket short',
    source: jackets,
    basis: 'printed',
    inputs: boat({ wearable: 3 }),
    outputs: { missing: 1 },
    verdict: 'unsatisfactory',
  },
];

const signalChecks: Check[] = [
  {
    name: 'two hand flares and one parachute flare meet day and night',
    source: '33 CFR 175.130(b), first example, 2015 edition',
    basis: 'printed',
    inputs: boat({ signals: [signal('hand-flare', 2, later), signal('parachute-flare', 1, later)] }),
    outputs: { daySets: 1, nightSets: 1, signalsRequired: 'day-and-night' },
    verdict: 'satisfactory',
  },
  {
    name: 'three hand smokes and an electric light meet day and night',
    source: '33 CFR 175.130(b), second example, 2015 edition',
    basis: 'printed',
    inputs: boat({ signals: [signal('hand-smoke', 3, later), signal('electric-light', 1)] }),
    outputs: { daySets: 1, nightSets: 1 },
    verdict: 'satisfactory',
  },
  {
    name: 'under 16 ft by night: night signals only',
    source: '33 CFR 175.110(b), 2015 edition',
    basis: 'edge',
    inputs: boat({ length: 15.9 }),
    outputs: { signalsRequired: 'night' },
  },
  {
    name: 'under 16 ft by day: none',
    source: '33 CFR 175.110(b), 2015 edition',
    basis: 'printed',
    inputs: boat({ length: 15, night: false, signals: [] }),
    outputs: { signalsRequired: 'none' },
    verdict: 'satisfactory',
  },
  {
    name: 'open sailing boat of 25.9 ft without engine: night only',
    source: '33 CFR 175.115(c), 2015 edition',
    basis: 'edge',
    inputs: boat({ craft: 'open-sail', engine: 'none', length: 25.9 }),
    outputs: { signalsRequired: 'night' },
  },
  {
    name: 'of 26 ft: day and night',
    source: '33 CFR 175.115(c), 2015 edition',
    basis: 'edge',
    inputs: boat({ craft: 'open-sail', engine: 'none', length: 26 }),
    outputs: { signalsRequired: 'day-and-night' },
  },
  {
    name: 'a rowing boat of 18 ft: night only',
    source: '33 CFR 175.115(b), 2015 edition',
    basis: 'printed',
    inputs: boat({ craft: 'rowed', engine: 'none', length: 18 }),
    outputs: { signalsRequired: 'night' },
  },
  {
    name: 'inland waters: none',
    source: '33 CFR 175.101, 175.105, 2015 edition',
    basis: 'printed',
    inputs: boat({ waters: 'inland', signals: [] }),
    outputs: { signalsRequired: 'none' },
    verdict: 'satisfactory',
  },
  {
    name: 'good until the day of the inventory still counts, and is warned of',
    source: '33 CFR 175.125, 2015 edition',
    basis: 'edge',
    inputs: boat({ signals: [signal('hand-flare', 3, '2026-06-01')] }),
    outputs: { daySets: 1 },
    verdict: 'attention',
  },
  {
    name: 'good until the day before does not',
    source: '33 CFR 175.125, 2015 edition',
    basis: 'edge',
    inputs: boat({ signals: [signal('hand-flare', 3, '2026-05-31')] }),
    outputs: { daySets: 0, nightSets: 0, missing: 2 },
    verdict: 'unsatisfactory',
  },
  {
    name: 'flares whose date was not found are not certain',
    source: '33 CFR 175.125, 2015 edition',
    basis: 'computed',
    inputs: boat({ signals: [signal('hand-flare', 3)] }),
    outputs: { uncertain: 2 },
    verdict: 'indeterminate',
  },
];

const coastGuard = 'US Coast Guard, question 3 on the rule of 20 April 2022 (mirrored); DVIDS news 428758';
const fireChecks: Check[] = [
  {
    name: 'outboard of 25.9 ft that can’t trap vapour: none',
    source: '33 CFR 175.320(a)(1), lexfed.com',
    basis: 'edge',
    inputs: boat({ engine: 'outboard', length: 25.9, canTrap: 'no', extinguishers: [] }),
    outputs: { extinguishersRequired: 0 },
    verdict: 'satisfactory',
  },
  {
    name: 'of 26 ft: two',
    source: '33 CFR 175.320(a)(1), lexfed.com',
    basis: 'edge',
    inputs: boat({ engine: 'outboard', length: 26, canTrap: 'no' }),
    outputs: { extinguishersRequired: 2 },
  },
  {
    name: '40 ft: one 20-B and one 5-B make three',
    source: '33 CFR 175.320, one 20-B for two 5-B (ketchikandailynews.com; legalclarity.org)',
    basis: 'printed',
    inputs: boat({ length: 40, extinguishers: [bottle('20-B', 1), bottle('5-B', 1)] }),
    outputs: { extinguishersCounted: 3, missing: 0 },
  },
  {
    name: '30 ft: a 10-B is one 5-B, not two',
    source: 'waggonerguide.com; ketchikandailynews.com on 10-B',
    basis: 'printed',
    inputs: boat({ extinguishers: [bottle('10-B', 1)] }),
    outputs: { extinguishersCounted: 1, extinguishersRequired: 2, missing: 1 },
    verdict: 'unsatisfactory',
  },
  {
    name: 'stamped 2013: good until 31 December 2025',
    source: `${coastGuard}, its example`,
    basis: 'printed',
    inputs: boat({ surveyedOn: '2025-12-31', extinguishers: [bottle('5-B', 2, { yearMade: 2013 })] }),
    outputs: { extinguishersCounted: 2 },
    verdict: 'attention',
  },
  {
    name: 'and out of service the day after',
    source: `${coastGuard}, its example`,
    basis: 'edge',
    inputs: boat({ surveyedOn: '2026-01-01', extinguishers: [bottle('5-B', 2, { yearMade: 2013 })] }),
    outputs: { extinguishersCounted: 0 },
    verdict: 'unsatisfactory',
  },
  {
    name: 'stamped “09” and seen in 2022: over 12 years',
    source: 'waggonerguide.com, its example',
    basis: 'printed',
    inputs: boat({ surveyedOn: '2022-06-01', extinguishers: [bottle('5-B', 2, { yearMade: 2009 })] }),
    outputs: { extinguishersCounted: 0 },
  },
  {
    name: 'a rechargeable one has no such age',
    source: coastGuard,
    basis: 'printed',
    inputs: boat({ extinguishers: [bottle('5-B', 2, { yearMade: 2003, rechargeable: true })] }),
    outputs: { extinguishersCounted: 2 },
    verdict: 'satisfactory',
  },
  {
    name: 'model year 2018: B-I does not count',
    source: 'NC Wildlife, 16 May 2022; waggonerguide.com',
    basis: 'edge',
    inputs: boat({
      modelYear: 2018,
      extinguishers: [bottle('B-I', 2, { rechargeable: true, yearMade: 2012, newlyFitted: 'no' })],
    }),
    outputs: { extinguishersCounted: 0 },
    verdict: 'unsatisfactory',
  },
  {
    name: 'model year 2017: B-I aboard since before 22 August 2016 counts',
    source: '33 CFR 175.380(a), lexbuild.dev, 5 April 2026',
    basis: 'edge',
    inputs: boat({
      modelYear: 2017,
      extinguishers: [bottle('B-I', 2, { rechargeable: true, yearMade: 2012, newlyFitted: 'no' })],
    }),
    outputs: { extinguishersCounted: 2 },
    verdict: 'satisfactory',
  },
  {
    name: 'put aboard after that day it does not',
    source: '33 CFR 175.380(b), lexbuild.dev, 5 April 2026',
    basis: 'printed',
    inputs: boat({
      modelYear: 2010,
      extinguishers: [bottle('B-I', 2, { rechargeable: true, yearMade: 2012, newlyFitted: 'yes' })],
    }),
    outputs: { extinguishersCounted: 0 },
    verdict: 'unsatisfactory',
  },
  {
    name: 'not known since when: not certain',
    source: '33 CFR 175.380, lexbuild.dev, 5 April 2026',
    basis: 'computed',
    inputs: boat({
      modelYear: 2010,
      extinguishers: [bottle('B-II', 1, { rechargeable: true, yearMade: 2012 })],
    }),
    outputs: { extinguishersCounted: 0, uncertain: 1 },
    verdict: 'indeterminate',
  },
  {
    name: 'over 65 ft, 90 gross tons, 1,400 hp: two and two',
    source: '33 CFR 175.320(b), by its table and one for each 1,000 hp or part',
    basis: 'computed',
    inputs: boat({ length: 80, grossTons: 90, mainPower: 1400 }),
    outputs: { largeRequired: 4, largeCounted: 5 },
  },
  {
    name: 'exactly 1,000 hp is one, a little more two',
    source: '33 CFR 175.320(b)(2)(i), for each 1,000 hp or fraction',
    basis: 'edge',
    inputs: boat({ length: 80, grossTons: 40, mainPower: 1000.5 }),
    outputs: { largeRequired: 3 },
  },
  {
    name: '7,500 hp: no more than six for the engines',
    source: '33 CFR 175.320(b)(2)(i), not more than six',
    basis: 'printed',
    inputs: boat({ length: 110, grossTons: 40, mainPower: 7500 }),
    outputs: { largeRequired: 7 },
  },
];

const otherChecks: Check[] = [
  {
    name: '25.9 ft: no placards',
    source: '33 CFR 155.450(a), 151.51(e)(1), 2015 edition',
    basis: 'edge',
    inputs: boat({ length: 25.9 }),
    outputs: { oilPlacardRequired: false, garbagePlacardRequired: false },
  },
  {
    name: '26.0 ft: both',
    source: '33 CFR 155.450(a), 151.51(e)(1), 2015 edition',
    basis: 'edge',
    inputs: boat({ length: 26, oilPlacard: 'no' }),
    outputs: { oilPlacardRequired: true, garbagePlacardRequired: true, missing: 1 },
  },
  {
    name: '40 ft day boat on the coast: no plan',
    source: '33 CFR 151.51(d)(1), 2015 edition',
    basis: 'printed',
    inputs: boat({ length: 40 }),
    outputs: { garbagePlanRequired: false },
  },
  {
    name: '40.0 ft at sea with galley and berths: a plan',
    source: '33 CFR 151.51(d)(1), 2015 edition',
    basis: 'edge',
    inputs: boat({ length: 40, waters: 'ocean', galleyAndBerths: true, garbagePlan: 'no' }),
    outputs: { garbagePlanRequired: true, missing: 1 },
  },
  {
    name: '39.9 ft: none',
    source: '33 CFR 151.51(d)(1), 2015 edition',
    basis: 'edge',
    inputs: boat({ length: 39.9, waters: 'ocean', galleyAndBerths: true }),
    outputs: { garbagePlanRequired: false },
  },
  {
    name: 'type I on 65 ft passes',
    source: '33 CFR 159.7(a)(2), 2015 edition',
    basis: 'edge',
    inputs: boat({ length: 65, toilet: 'type-1' }),
    outputs: { missing: 0 },
    verdict: 'satisfactory',
  },
  {
    name: 'type I on 66 ft fails',
    source: '33 CFR 159.7(a)(2), 2015 edition',
    basis: 'edge',
    inputs: boat({ length: 66, grossTons: 60, mainPower: 900, toilet: 'type-1' }),
    outputs: { missing: 1 },
    verdict: 'unsatisfactory',
  },
  {
    name: 'an installed toilet without a device fails',
    source: '33 CFR 159.7(a), 2015 edition',
    basis: 'printed',
    inputs: boat({ toilet: 'no-device' }),
    outputs: { missing: 1 },
  },
  {
    name: 'flame control on a petrol inboard, not on an outboard',
    source: '46 CFR 25.35-1(a), 2015 edition',
    basis: 'printed',
    inputs: boat({ engine: 'inboard-petrol', flameControl: 'no' }),
    outputs: { flameControlRequired: true, missing: 1 },
  },
  {
    name: 'outboard',
    source: '46 CFR 25.35-1(a), 2015 edition',
    basis: 'printed',
    inputs: boat({ engine: 'outboard', flameControl: 'no' }),
    outputs: { flameControlRequired: false, missing: 0 },
  },
  {
    name: '11.99 m under power: all-round light and sidelights will do, no copy of the rules',
    source: '33 CFR 83.23(d), 83.01(g), 2015 edition',
    basis: 'edge',
    inputs: boat({
      length: { value: 11.99, unit: 'm' },
      mastheadLight: 'no',
      sternLight: 'no',
      rulesBook: 'no',
    }),
    outputs: { missing: 0 },
    verdict: 'satisfactory',
  },
  {
    name: '12 m: masthead light, sidelights and sternlight, and the rules',
    source: '33 CFR 83.23(a), 83.01(g), 2015 edition',
    basis: 'edge',
    inputs: boat({
      length: { value: 12, unit: 'm' },
      mastheadLight: 'no',
      sternLight: 'no',
      rulesBook: 'no',
    }),
    outputs: { missing: 2 },
  },
  {
    name: 'sailing boat of 6.9 m without engine: a torch will do',
    source: '33 CFR 83.25(d)(i), 2015 edition',
    basis: 'edge',
    inputs: boat({
      craft: 'sail',
      engine: 'none',
      length: { value: 6.9, unit: 'm' },
      sidelights: 'no',
      sternLight: 'no',
      allRoundLight: 'no',
    }),
    outputs: { missing: 0 },
  },
  {
    name: 'of 7 m: sidelights and sternlight',
    source: '33 CFR 83.25(a), 2015 edition',
    basis: 'edge',
    inputs: boat({ craft: 'sail', engine: 'none', length: { value: 7, unit: 'm' }, sternLight: 'no' }),
    outputs: { missing: 1 },
  },
  {
    name: 'a bell from 20 m',
    source: '33 CFR 83.33(a), 2015 edition',
    basis: 'edge',
    inputs: boat({ length: { value: 20, unit: 'm' }, grossTons: 40, mainPower: 800, bell: 'no' }),
    outputs: { missing: 1 },
  },
  {
    name: 'no bell at 19.9 m',
    source: '33 CFR 83.33(a), 2015 edition',
    basis: 'edge',
    inputs: boat({ length: { value: 19.9, unit: 'm' }, grossTons: 40, mainPower: 800, bell: 'no' }),
    outputs: { missing: 0 },
  },
  {
    name: 'what was not examined is not passed',
    source: 'an answer left alone counts as not examined',
    basis: 'computed',
    inputs: boat({ soundSignal: 'not-examined' }),
    outputs: { uncertain: 1, missing: 0 },
    verdict: 'indeterminate',
  },
  {
    name: 'a motorboat without engine',
    source: 'impossible inputs',
    basis: 'computed',
    inputs: boat({ engine: 'none' }),
    refused: ['engine'],
  },
  {
    name: 'over 65 ft without tonnage and power',
    source: '33 CFR 175.320(b)',
    basis: 'computed',
    inputs: boat({ length: 65.1 }),
    refused: ['grossTons', 'mainPower'],
  },
  {
    name: 'an extinguisher from the future',
    source: 'impossible inputs',
    basis: 'computed',
    inputs: boat({ extinguishers: [bottle('5-B', 2, { yearMade: 2027 })] }),
    refused: ['extinguishers/0/yearMade'],
  },
];

export const carriageChecks: CheckedWorksheet = {
  kind: 'carriage',
  checks: [...lifeChecks, ...signalChecks, ...fireChecks, ...otherChecks, ...tableChecks],
  unverified: [
    'The cells of table 1 to 33 CFR 175.320(a)(1) were blank in the copies read; the numbers are those of 46 CFR 25.30-20 (2015 edition), which newspapers and the Coast Guard’s answers say were kept.',
    'The 12-year life of non-rechargeable extinguishers was seen in the Coast Guard’s answers and news, not in the section itself.',
    'Parts 83, 151, 155, 159 and 175 subpart C were read in the 2015 edition; later changes, such as newer standards for electric distress lights, are not included.',
  ],
};
