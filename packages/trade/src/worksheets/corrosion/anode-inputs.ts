import { choice, count, fallback, measure, optional, plainNumber } from '../core/fields.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';
import { usualPotential } from './anode-demand.ts';
import { countedRadius } from './anode-resistance.ts';

const time = { unit: 'month', units: ['year', 'day'], max: 600 } as const;
const current = { unit: 'A', units: ['mA'], above: 0, max: 5000 } as const;
const density = { unit: 'mA/m2', units: ['A/m2', 'mA/ft2'], above: 0, max: 2000 } as const;
const size = { unit: 'mm', units: ['cm', 'm', 'in', 'ft'], above: 0, max: 5000 } as const;
const potential = { unit: 'mV', units: ['V'], min: -2000, max: 0 } as const;

export const inputs = {
  alloy: choice({
    label: 'Alloy',
    choices: { zinc: 'Zinc', aluminium: 'Aluminium', magnesium: 'Magnesium' },
  }),
  count: fallback(count({ label: 'Anodes of this kind', min: 1, max: 10_000 }), 1),
  newMass: measure({
    label: 'Alloy in one anode, new',
    help: 'Without its straps or core',
    unit: 'kg',
    units: ['g', 'lb', 'oz'],
    above: 0,
    max: 2000,
  }),
  wasted: optional(
    measure({ label: 'Wasted away', help: 'Share of a new anode, mean of all', unit: '%', min: 0, max: 100 }),
  ),
  wastedWithin: fallback(
    measure({
      label: 'That share is good to',
      help: 'By eye some 10%, by weighing 1%',
      unit: '%',
      min: 0.1,
      max: 30,
    }),
    10,
  ),
  inService: optional(measure({ label: 'Time since they were fitted new', above: 0, ...time })),
  untilNext: fallback(measure({ label: 'Time to the next haul-out', above: 0, ...time }), 12),
  renewAt: fallback(
    measure({ label: 'Renewed when wasted by', help: 'The firm’s limit', unit: '%', min: 10, max: 95 }),
    50,
  ),
  meanCurrent: optional(
    measure({ label: 'Current they give', help: 'Measured, if it was; otherwise give the area', ...current }),
  ),
  area: optional(
    measure({
      label: 'Metal under water to be protected',
      unit: 'm2',
      units: ['ft2', 'cm2'],
      above: 0,
      max: 1_000_000,
    }),
  ),
  meanDensity: optional(
    measure({
      label: 'Current it needs, bare: mean',
      help: 'Steel in temperate sea water 100 mA/m²',
      ...density,
    }),
  ),
  initialDensity: optional(measure({ label: 'Current it needs, bare: at first', ...density })),
  finalDensity: optional(measure({ label: 'Current it needs, bare: at the end', ...density })),
  bareStart: fallback(
    plainNumber({ label: 'Share that is bare at first', help: '1 without paint', min: 0, max: 1 }),
    1,
  ),
  barePerYear: fallback(plainNumber({ label: 'Share that becomes bare each year', min: 0, max: 1 }), 0),
  life: optional(
    measure({ label: 'Life wanted', help: 'Otherwise the time to the next haul-out', above: 0, ...time }),
  ),
  capacity: optional(
    measure({
      label: 'Capacity of the alloy',
      help: 'By its maker, if not the usual one',
      unit: 'Ah/kg',
      above: 0,
      max: 3000,
    }),
  ),
  utilisation: optional(
    plainNumber({
      label: 'Share of the alloy that can be used',
      help: 'If not the usual one',
      above: 0,
      max: 1,
    }),
  ),
  shape: optional(
    choice({
      label: 'Shape',
      help: 'For its resistance and current',
      choices: {
        'long-slender': 'Slender, standing off, at least 4 radii long',
        'short-slender': 'Slender, standing off, shorter than 4 radii',
        'long-flush': 'Flush on the hull, at least 4 widths long',
        other: 'Short flush, bracelet or other',
      },
    }),
  ),
  length: optional(measure({ label: 'Length of the anode', ...size })),
  radius: optional(measure({ label: 'Radius, if round', ...size })),
  width: optional(measure({ label: 'Width, if not round', ...size })),
  depth: optional(measure({ label: 'Depth or thickness, if not round', ...size })),
  coreWidth: optional(
    measure({
      label: 'Across its core',
      help: 'Diameter of a pipe, width of a strap; for the end of its life',
      unit: 'mm',
      units: ['cm', 'm', 'in'],
      min: 0,
      max: 5000,
    }),
  ),
  exposedArea: optional(
    measure({
      label: 'Surface in the water',
      unit: 'cm2',
      units: ['m2', 'in2', 'ft2'],
      above: 0,
      max: 1_000_000,
    }),
  ),
  standOff: optional(
    measure({ label: 'Distance from the hull', unit: 'mm', units: ['cm', 'm', 'in'], min: 0, max: 100_000 }),
  ),
  resistivity: fallback(
    measure({
      label: 'Resistivity of the water',
      help: 'Sea water 0.20 to 0.35 Ω·m, warm to cold',
      unit: 'ohm m',
      units: ['ohm cm'],
      min: 0.1,
      max: 200,
    }),
    0.3,
  ),
  anodePotential: optional(
    measure({
      label: 'Working potential of the anode',
      help: 'Against silver chloride, if not the usual one',
      ...potential,
    }),
  ),
  hullPotential: fallback(
    measure({ label: 'Potential it must hold', help: 'Against silver chloride', ...potential }),
    -800,
  ),
};

export type Asked = Values<typeof inputs>;

const problem = (field: keyof typeof inputs, message: string): InputProblem => ({ field, message });

function shapeProblems(v: Asked): InputProblem[] {
  if (!v.shape) return [];
  if (v.shape === 'other') {
    return v.exposedArea
      ? []
      : [problem('exposedArea', 'Surface in the water must be given for this shape.')];
  }
  const found: InputProblem[] = [];
  if (!v.length) found.push(problem('length', 'Length of the anode must be given for this shape.'));
  if (v.shape === 'long-flush') {
    if (!v.width) found.push(problem('width', 'Width must be given for a flush anode.'));
    if (!v.depth) found.push(problem('depth', 'Thickness must be given for a flush anode.'));
    const across = Math.max(v.width?.in('m') ?? 0, v.depth?.in('m') ?? 0);
    if (v.length && v.length.in('m') < 4 * across) {
      found.push(
        problem('shape', 'A long flush anode is at least 4 widths and 4 thicknesses long: choose “other”.'),
      );
    }
    return found;
  }
  if (!v.standOff) found.push(problem('standOff', 'Distance from the hull must be given for this shape.'));
  if (!v.radius && !(v.width && v.depth)) {
    found.push(problem('radius', 'Give the radius, or the width and depth, of the section.'));
    return found;
  }
  const radius = countedRadius({
    ...(v.radius ? { radius: v.radius.in('m') } : {}),
    width: v.width?.in('m') ?? 0,
    depth: v.depth?.in('m') ?? 0,
  });
  if (v.length && v.length.in('m') >= 4 * radius !== (v.shape === 'long-slender')) {
    const how =
      v.shape === 'long-slender'
        ? 'less than 4 radii: choose the short form'
        : 'at least 4 radii: choose the long form';
    found.push(problem('shape', `The anode’s length is ${how}.`));
  }
  if (v.coreWidth && v.coreWidth.in('m') >= 2 * radius) {
    found.push(problem('coreWidth', 'Across its core must be less than across the anode.'));
  }
  return found;
}

/** What is missing, or can't go together. */
export function problems(v: Asked): InputProblem[] {
  const found = shapeProblems(v);
  if (!v.wasted && !v.meanCurrent && !v.area && !v.shape) {
    found.push(
      problem(
        'wasted',
        'Give how much is wasted away, the current or area to be protected, or the anode’s shape.',
      ),
    );
  }
  if (v.area && v.meanCurrent) {
    found.push(problem('meanCurrent', 'Give the current or the area to be protected, not both.'));
  }
  if (v.area && !v.meanDensity) {
    found.push(problem('meanDensity', 'The mean current the metal needs must be given with its area.'));
  }
  const own = v.anodePotential?.in('mV') ?? usualPotential[v.alloy];
  if (own !== undefined && own >= v.hullPotential.in('mV')) {
    found.push(problem('hullPotential', `An anode at ${own} mV can’t hold ${v.hullPotential.text()}.`));
  }
  return found;
}
