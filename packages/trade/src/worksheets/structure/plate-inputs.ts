import { count, fallback, measure, optional, words } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import type { InputProblem, Values } from '../core/worksheet.ts';

const thickness = { unit: 'mm', units: ['in', 'mil', 'um', 'cm'], above: 0, max: 200 } as const;
const share = { unit: '%', units: ['one'] } as const;
const plateName = words({
  label: 'Plate',
  help: 'As on the shell expansion: strake and number, side',
  max: 40,
});

export const plateInputs = {
  plates: rows({
    label: 'Plates',
    each: 'plate',
    max: 400,
    columns: {
      plate: plateName,
      original: measure({
        label: 'Original thickness',
        help: 'From the plans or the builder; else the thickest sound reading, which hides loss',
        ...thickness,
      }),
      pitDepth: optional(
        measure({ label: 'Deepest pit', help: 'By pit gauge from the surface round it', ...thickness }),
      ),
      pitted: optional(
        measure({
          label: 'Share pitted',
          help: 'Of the plate’s surface, judged by eye',
          min: 0,
          max: 100,
          ...share,
        }),
      ),
    },
  }),
  readings: rows({
    label: 'Readings',
    each: 'reading',
    max: 5000,
    columns: { plate: plateName, thickness: measure({ label: 'Thickness', ...thickness }) },
  }),
  renewalLoss: fallback(
    measure({
      label: 'Mean loss of a plate beyond which it is to be renewed',
      help: '20 % is usual for plating built to rule, 15 % for plating built lighter',
      above: 0,
      max: 90,
      ...share,
    }),
    20,
  ),
  localLoss: fallback(
    measure({
      label: 'Loss at one reading beyond which the place is looked at closer',
      above: 0,
      max: 90,
      ...share,
    }),
    25,
  ),
  substantialShare: fallback(
    measure({
      label: 'Substantial corrosion, from this share of the mean loss allowed',
      above: 0,
      max: 100,
      ...share,
    }),
    75,
  ),
  leastThickness: optional(
    measure({
      label: 'Least thickness an insurer or code asks for',
      help: 'Anywhere, pits included',
      ...thickness,
    }),
  ),
  leftUnderPit: fallback(
    measure({
      label: 'Thickness to be left under a pit, of the original: more than',
      min: 0,
      max: 100,
      ...share,
    }),
    70,
  ),
  pittedShare: fallback(
    measure({
      label: 'Share pitted beyond which the deepest pits must be measured',
      min: 0,
      max: 100,
      ...share,
    }),
    15,
  ),
  readingsPerPlate: fallback(count({ label: 'Fewest readings to judge a plate', min: 1, max: 50 }), 2),
  allowance: fallback(
    measure({
      label: 'Excess over the original put down to rolling and gauge',
      help: 'Readings thicker by more are doubtful and left out',
      unit: 'mm',
      units: ['in', 'mil', 'um'],
      min: 0,
      max: 5,
    }),
    0.3,
  ),
  gaugeStep: fallback(
    measure({
      label: 'Smallest change the gauge shows',
      unit: 'mm',
      units: ['in', 'mil', 'um'],
      above: 0,
      max: 2,
    }),
    0.1,
  ),
};

/** Names that match nothing, twice the same, pits deeper than the plate. */
export function plateProblems(v: Values<typeof plateInputs>): InputProblem[] {
  const problems: InputProblem[] = [];
  const known = new Set<string>();
  for (const [row, { plate, original, pitDepth }] of v.plates.entries()) {
    if (known.has(plate)) {
      const message = `Plates, row ${row + 1}: plate “${plate}” is already in the list; give each plate once.`;
      problems.push({ field: `plates/${row}/plate`, message });
    }
    known.add(plate);
    if (pitDepth && pitDepth.in('mm') > original.in('mm')) {
      const message = `Plates, row ${row + 1}: a pit of ${pitDepth.text(4)} is deeper than the original ${original.text(4)}.`;
      problems.push({ field: `plates/${row}/pitDepth`, message });
    }
  }
  const strays = new Set<string>();
  for (const [row, { plate }] of v.readings.entries()) {
    if (known.has(plate) || strays.has(plate)) continue;
    strays.add(plate);
    const message = `Readings, row ${row + 1}: plate “${plate}” is not in the list of plates; add it with its original thickness.`;
    problems.push({ field: `readings/${row}/plate`, message });
  }
  return problems;
}
