import { choice, fallback, measure, optional } from '../core/fields.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';
import { chainLimits, chainSizes, nylonSizes, shackleLimits, shackleSizes } from './rode-table.ts';

const force = { unit: 'lbf', units: ['kN', 'N', 'daN', 'kgf', 'tf'], above: 0, max: 1_000_000 } as const;
const length = { unit: 'm', units: ['ft'], max: 1000 } as const;

export const inputs = {
  boatLength: measure({ label: 'Length overall', unit: 'ft', units: ['m'], above: 0, max: 500 }),
  beam: optional(
    measure({
      label: 'Beam',
      help: 'Length or beam is taken, whichever gives the larger load',
      unit: 'ft',
      units: ['m'],
      above: 0,
      max: 100,
    }),
  ),
  boat: choice({ label: 'Kind of boat', choices: { sail: 'Sail', power: 'Power' } }),
  windage: fallback(
    choice({
      label: 'Windage',
      choices: { usual: 'Usual for the length', high: 'High: tall upperworks, two hulls, much canvas' },
    }),
    'usual',
  ),
  wind: choice({
    label: 'Wind to hold in',
    choices: {
      '15': '15 kn, a short stop',
      '30': '30 kn, the working anchor',
      '42': '42 kn, a storm',
      '60': '60 kn',
    },
  }),
  load: optional(
    measure({ label: 'Load to hold, if known', help: 'It replaces the table of loads', ...force }),
  ),
  chain: choice({
    label: 'Chain',
    choices: {
      none: 'None',
      G30: 'Grade 30, proof coil or BBB',
      G43: 'Grade 43, high test',
      G70: 'Grade 70, transport',
      marked: 'Other, its working load limit known',
    },
  }),
  chainSize: optional(choice({ label: 'Trade size of the chain', choices: chainSizes })),
  chainLimit: optional(
    measure({ label: 'Working load limit of the chain', help: 'From the maker or a certificate', ...force }),
  ),
  shackle: choice({
    label: 'Shackles',
    choices: {
      none: 'None',
      carbon: 'Forged carbon steel',
      alloy: 'Forged alloy steel',
      marked: 'Other, their working load limit marked',
    },
  }),
  shackleSize: optional(
    choice({
      label: 'Trade size of the smallest shackle',
      help: 'Of its bow, not its pin',
      choices: shackleSizes,
    }),
  ),
  shackleLimit: optional(
    measure({
      label: 'Working load limit of the smallest shackle',
      help: 'Stainless yacht shackles have no common standard: read the mark',
      ...force,
    }),
  ),
  swivelLimit: optional(measure({ label: 'Working load limit of the swivel or connector', ...force })),
  rope: choice({
    label: 'Rope',
    choices: { none: 'None', nylon: 'Three-strand nylon', marked: 'Other, its breaking load known' },
  }),
  ropeSize: optional(choice({ label: 'Diameter of the rope', choices: nylonSizes })),
  ropeBreaking: optional(measure({ label: 'Breaking load of the rope', ...force })),
  ropeShare: fallback(
    measure({
      label: 'Share of its breaking load that rope may work at',
      help: '15 to 25 % is usual',
      unit: '%',
      above: 0,
      max: 50,
    }),
    15,
  ),
  ropeEnd: fallback(
    choice({
      label: 'Ends of the rope',
      choices: { spliced: 'Spliced round a thimble', knotted: 'Knotted, which halves it' },
    }),
    'spliced',
  ),
  depth: optional(
    measure({ label: 'Depth of water', help: 'At its highest while at anchor', above: 0, ...length }),
  ),
  bowHeight: optional(measure({ label: 'Bow roller above the water', min: 0, ...length })),
  chainLength: optional(measure({ label: 'Chain let out', min: 0, ...length })),
  ropeLength: optional(measure({ label: 'Rope let out', min: 0, ...length })),
  chainMass: optional(
    measure({
      label: 'Mass of a length of chain',
      help: 'Weigh it, or the maker’s figure; 8 mm is about 1.4 and 10 mm about 2.3 kg/m',
      unit: 'kg/m',
      units: ['lb/ft'],
      above: 0,
      max: 100,
    }),
  ),
  angleLimit: fallback(
    measure({ label: 'Greatest angle of pull at the anchor', unit: 'deg', units: ['rad'], min: 0, max: 45 }),
    8,
  ),
  leastScope: fallback(
    measure({
      label: 'Least scope with rope',
      help: 'Rode let out over depth plus bow height: 5 to 7 at work, 10 in a storm',
      unit: 'one',
      min: 1,
      max: 20,
    }),
    5,
  ),
};

/** What a surveyor gave of the rode. */
export type RodeGiven = Values<typeof inputs>;

const need = (field: string, message: string): InputProblem[] => [{ field, message }];

function partProblems(v: RodeGiven): InputProblem[] {
  const problems: InputProblem[] = [];
  if (v.chain === 'marked') {
    if (!v.chainLimit) problems.push(...need('chainLimit', 'Give the working load limit of the chain.'));
  } else if (v.chain !== 'none') {
    if (!v.chainSize) problems.push(...need('chainSize', 'Give the trade size of the chain.'));
    else if (chainLimits[v.chain][v.chainSize] === undefined) {
      const message = `No limit is printed for ${v.chain} chain of ${v.chainSize}: choose “other” and give the maker’s.`;
      problems.push(...need('chainSize', message));
    }
  }
  if (v.shackle === 'marked') {
    if (!v.shackleLimit)
      problems.push(...need('shackleLimit', 'Give the working load limit of the shackle.'));
  } else if (v.shackle !== 'none') {
    if (!v.shackleSize) problems.push(...need('shackleSize', 'Give the trade size of the smallest shackle.'));
    else if (shackleLimits[v.shackle][v.shackleSize] === undefined) {
      const message = `No limit is printed for ${v.shackle} shackles of ${v.shackleSize}: choose “other” and give the marked one.`;
      problems.push(...need('shackleSize', message));
    }
  }
  if (v.rope === 'marked' && !v.ropeBreaking)
    problems.push(...need('ropeBreaking', 'Give the breaking load of the rope.'));
  if (v.rope === 'nylon' && !v.ropeSize) problems.push(...need('ropeSize', 'Give the diameter of the rope.'));
  if (v.chain === 'none' && v.rope === 'none')
    problems.push(...need('chain', 'A rode is of chain, of rope or of both: choose at least one.'));
  return problems;
}

function layProblems(v: RodeGiven): InputProblem[] {
  const chain = v.chainLength?.in('m') ?? 0;
  const rope = v.ropeLength?.in('m') ?? 0;
  const problems: InputProblem[] = [];
  if (v.chain === 'none' && chain > 0)
    problems.push(...need('chainLength', 'Chain was let out, but the rode has none.'));
  if (v.rope === 'none' && rope > 0)
    problems.push(...need('ropeLength', 'Rope was let out, but the rode has none.'));
  if (!v.depth) return problems;
  if (!v.bowHeight)
    return [...problems, ...need('bowHeight', 'Give the height of the bow roller above the water too.')];
  const height = v.depth.in('m') + v.bowHeight.in('m');
  if (chain + rope <= height)
    problems.push(
      ...need(
        v.chain === 'none' ? 'ropeLength' : 'chainLength',
        `The rode let out must be longer than the ${v.depth.to('m').text()} and ${v.bowHeight.to('m').text()} from the seabed to the bow.`,
      ),
    );
  if (chain > 0 && !v.chainMass)
    problems.push(...need('chainMass', 'Give the mass of the chain, for the curve it hangs in.'));
  return problems;
}

/** What is missing or contradicts itself in the inputs of a rode. */
export const rodeProblems = (v: RodeGiven): InputProblem[] => [...partProblems(v), ...layProblems(v)];
