import { measured, number, type Output, said } from '../core/outputs.ts';
import { convert, settle } from '../core/units.ts';
import { conclude } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { type Lie, lieOf, type Rode, tangentLength, weightInWater } from './rode-catenary.ts';
import { drawParts, drawRode } from './rode-drawing.ts';
import { inputs, type RodeGiven, rodeProblems } from './rode-inputs.ts';
import { judgeLie, judgeParts, type Part, pounds, scopeOf, workLie } from './rode-judge.ts';
import {
  chainBreaking,
  chainLimits,
  horizontalLoads,
  loadColumn,
  loadLengths,
  nylonBreaking,
  shackleLimits,
} from './rode-table.ts';

const columnOf = (v: RodeGiven): number | undefined =>
  loadColumn({
    length: v.boatLength.in('ft'),
    ...(v.beam ? { beam: v.beam.in('ft') } : {}),
    kind: v.boat,
    highWindage: v.windage === 'high',
  });

/** Load to hold, lbf: the surveyor's own, else the table's. */
function loadOf(v: RodeGiven): number | undefined {
  if (v.load) return v.load.in('lbf');
  const column = columnOf(v);
  return column === undefined ? undefined : horizontalLoads[v.wind][column];
}

function ropeBreaking(v: RodeGiven): number | undefined {
  if (v.rope === 'marked') return v.ropeBreaking?.in('lbf');
  return v.rope === 'nylon' ? nylonBreaking[v.ropeSize ?? ''] : undefined;
}

const ropeFrom = (v: RodeGiven) =>
  `${v.ropeShare.text()} of its breaking load of ${pounds(ropeBreaking(v) ?? 0)}${v.ropeEnd === 'knotted' ? ', halved by the knot' : ''}`;

/** What rope may work at, lbf. */
function ropeLimit(v: RodeGiven): number | undefined {
  const breaking = ropeBreaking(v);
  if (breaking === undefined) return undefined;
  return settle((breaking * v.ropeShare.in('%') * (v.ropeEnd === 'knotted' ? 0.5 : 1)) / 100);
}

function chainLimit(v: RodeGiven): number | undefined {
  if (v.chain === 'none') return undefined;
  return v.chain === 'marked' ? v.chainLimit?.in('lbf') : chainLimits[v.chain][v.chainSize ?? ''];
}

function shackleLimit(v: RodeGiven): number | undefined {
  if (v.shackle === 'none') return undefined;
  if (v.shackle === 'marked') return v.shackleLimit?.in('lbf');
  const tons = shackleLimits[v.shackle][v.shackleSize ?? ''];
  return tons === undefined ? undefined : settle(tons * 2000);
}

function partsOf(v: RodeGiven): Part[] {
  const chain = `${v.chainSize ?? ''} ${v.chain}`.trim();
  const all: Array<[name: string, limit: number | undefined, from: string]> = [
    ['chain', chainLimit(v), v.chain === 'marked' ? 'the maker’s limit' : chain],
    [
      'shackle',
      shackleLimit(v),
      v.shackle === 'marked' ? 'its marked limit' : `${v.shackleSize} ${v.shackle}`,
    ],
    ['swivel or connector', v.swivelLimit?.in('lbf'), 'the maker’s limit'],
    ['rope', ropeLimit(v), ropeFrom(v)],
  ];
  return all.flatMap(([name, limit, from]) => (limit === undefined ? [] : [{ name, limit, from }]));
}

/** The rode as it lies, if depth and lengths were given. */
export function laidRode(v: RodeGiven, load: number): { rode: Rode; lie: Lie } | undefined {
  if (!v.depth || !v.bowHeight) return undefined;
  const rode: Rode = {
    chain: v.chainLength?.in('m') ?? 0,
    weight: v.chainMass ? weightInWater(v.chainMass.in('kg/m')) : 0,
    rope: v.ropeLength?.in('m') ?? 0,
    height: v.depth.in('m') + v.bowHeight.in('m'),
    pull: convert(load, 'lbf', 'N'),
  };
  return { rode, lie: lieOf(rode) };
}

const force = (label: string, value: number | undefined): Output =>
  measured(label, value ?? null, 'lbf', { digits: 4, also: 'kN' });

/** The weakest part of a rode against its load, and how it lies in the water. */
export const rode = defineWorksheet({
  kind: 'rode',
  version: 1,
  title: 'Anchor rode',
  group: 'rig',
  system: 'ground-tackle',
  purpose:
    'Finds the weakest part of an anchor rode against the load of boat and wind, and how chain and rope lie at that load: scope, pull on the anchor, chain left on the bottom.',
  inputs,
  refuse: rodeProblems,
  applicability:
    'Boats up to 70 ft in moderate shelter from the sea and free to swing; a boat between two lengths takes the longer’s load. New gear, in a steady pull.',
  outside: (v) =>
    loadOf(v) === undefined
      ? `The table of loads ends at ${loadLengths.at(-1)} ft and this boat falls beyond it: give the load to hold.`
      : undefined,
  compute: (v) => {
    const load = loadOf(v) ?? Number.NaN;
    const parts = partsOf(v);
    const weakest = parts.reduce((a, b) => (b.limit < a.limit ? b : a));
    const laid = laidRode(v, load);
    const column = columnOf(v);
    const tangent =
      laid && laid.rode.weight > 0 ? tangentLength(laid.rode.height, laid.rode.pull, laid.rode.weight) : null;
    const scope = laid ? scopeOf(laid.rode) : null;
    const graded = v.chain === 'none' || v.chain === 'marked' ? undefined : v.chain;
    const limit = chainLimit(v);
    const f = (value: number) => formatNumber(value, 4);
    return {
      outputs: {
        load: force('Load to hold', load),
        weakest: said('Weakest part', weakest.name),
        weakestLimit: force('It may work at', weakest.limit),
        margin: number('Working limit over load', weakest.limit / load),
        chainLimit: force('Chain may work at', limit),
        chainBreaking: force(
          'Chain breaks at',
          graded && limit !== undefined ? limit * chainBreaking[graded] : undefined,
        ),
        shackleLimit: force('Shackle may work at', shackleLimit(v)),
        ropeLimit: force('Rope may work at', ropeLimit(v)),
        scope: number('Scope', scope),
        tangentLength: measured('All-chain length that lies flat at the anchor', tangent, 'm', {
          digits: 4,
          also: 'ft',
        }),
        grounded: measured('Chain left on the seabed', laid?.lie.grounded ?? null, 'm', { also: 'ft' }),
        angle: measured('Angle of pull at the anchor', laid?.lie.angle ?? null, 'deg'),
        bowTension: measured('Pull at the bow', laid ? laid.lie.bowTension : null, 'N', {
          digits: 4,
          also: 'lbf',
        }),
      },
      ...conclude([
        ...judgeParts(parts, load, laid?.lie.bowTension),
        ...(laid ? judgeLie(v, laid.rode, laid.lie) : []),
      ]),
      working: [
        v.load
          ? line('Load to hold', 'as given', pounds(load))
          : line('Load to hold', `column of ${loadLengths[column ?? 0]} ft at ${v.wind} kn`, pounds(load)),
        ...parts.map((part) => line(`The ${part.name} may work at`, part.from, pounds(part.limit))),
        line('Weakest over load', `${f(weakest.limit)} / ${f(load)}`, formatNumber(weakest.limit / load, 3)),
        ...(laid ? workLie(laid.rode, laid.lie) : []),
      ],
    };
  },
  draw: (v, result) => {
    const load = loadOf(v) ?? Number.NaN;
    const laid = laidRode(v, load);
    return [
      drawParts(partsOf(v), load),
      ...(laid
        ? [drawRode(laid.rode, laid.lie, v.depth?.in('m') ?? 0, result.verdict === 'unsatisfactory')]
        : []),
    ];
  },
  cautions: [
    'Loads are for a steady wind in shelter. Snatching in waves can multiply them: use a nylon snubber, and take it off the windlass.',
    'Parts are matched by working load limit, not by size; worn, bent or corroded ones are not what the table says.',
    'Keep clear of a rode under load: nylon that parts recoils with force enough to kill.',
    'This is an indication by a surveyor; holding depends on the anchor and the bottom, which no table knows.',
  ],
  sources: [
    {
      citation: 'ABYC H-40, horizontal loads by length and wind',
      standing: 'secondary',
      note: 'as reprinted by a chandler (starmarinedepot.com); another reprint has wrong cells for 20 and 25 ft',
    },
    {
      citation: 'ABYC H-40, beams of the columns',
      standing: 'memory',
      note: 'value from memory; used only when a beam is given',
    },
    {
      citation:
        'Working load limits of chain, NACM 2003 and ASTM; break at 4, 3 and 4 times for G30, G43 and G70',
      standing: 'secondary',
      note: 'as a supplier prints them (1st-chainsupply.com)',
    },
    {
      citation: 'Working load limits of forged shackles in short tons',
      standing: 'secondary',
      note: 'as a supplier prints them (certifiedslings.com), 6:1 carbon and 5:1 alloy',
    },
    {
      citation: 'Breaking strength of three-strand nylon; working share of 15 to 25 %; a knot halves it',
      standing: 'secondary',
      note: 'engineeringtoolbox.com nylon table; a field guide to knots, p. 24; makers ask for as little as 8 %',
    },
    {
      citation: 'Catenary: L = √(h (h + 2F/w)), s = a sinh(x/a); steel weighs 0.87 in sea water',
      standing: 'secondary',
      note: 'tooljolt.com and sailingconachair.uk; rope is taken as straight and weightless in water',
    },
    {
      citation: 'Pull at the anchor within 8°; scope of 5 at work, 10 in a storm, 3 poor',
      standing: 'secondary',
      note: 'sailmagazine.com and starmarinedepot.com, rules of practice',
    },
  ],
});
