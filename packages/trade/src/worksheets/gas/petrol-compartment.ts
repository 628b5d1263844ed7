import { measure, optional } from '../core/fields.ts';
import type { Quantity } from '../core/quantity.ts';
import { formatNumber, line } from '../core/working.ts';
import type { Source } from '../core/worksheet.ts';

/** 33 CFR 183.605: square inches of open area for each cubic foot, from which a compartment is open to the atmosphere. */
export const openPerCubicFoot = 15;

/** The net volume of a petrol compartment, as both ventilation worksheets ask for it. */
export const netVolume = measure({
  label: 'Net volume of the compartment',
  help: 'Engine or tank space and what is open to it, less engine, tanks and other fixed things',
  unit: 'ft3',
  units: ['m3', 'L'],
  above: 0,
  max: 10_000,
});

export const openArea = optional(
  measure({
    label: 'Area open to the atmosphere',
    help: 'Straight to the open air, that can’t be closed; leave out for a closed compartment',
    unit: 'in2',
    units: ['cm2', 'm2', 'ft2'],
    min: 0,
    max: 1_000_000,
  }),
);

/** Whether the compartment counts as open to the atmosphere, and the area it takes, in². */
export function openToAtmosphere(volume: Quantity, area: Quantity | undefined) {
  const needed = openPerCubicFoot * volume.in('ft3');
  return { needed, open: area !== undefined && area.in('in2') >= needed };
}

/** The volume as the formulas take it. */
export const volumeLine = (volume: Quantity) =>
  line(
    'Net volume V',
    volume.unit === 'ft3' ? undefined : volume.text(),
    `${formatNumber(volume.in('ft3'))} ft³`,
  );

/** Working of the definition of an open compartment. */
export const openLine = (volume: Quantity, area: Quantity | undefined) =>
  line(
    'Open to the atmosphere from',
    '15 in² · V',
    `15 × ${formatNumber(volume.in('ft3'))}`,
    `${formatNumber(openPerCubicFoot * volume.in('ft3'))} in²${
      area ? `; open ${formatNumber(area.in('in2'))} in²` : '; none given'
    }`,
  );

export const openSource: Source = {
  citation: '33 CFR 183.605, open to the atmosphere: 15 in² for each ft³ of net volume',
  standing: 'printed',
};

export const petrolCautions: [string, string] = [
  'Petrol vapour is heavier than air and lies in the bilge; a spark in the compartment can explode it. Open up, let it clear and prove it with a gas detector before switching, measuring or starting anything.',
  'A rule of the United States for recreational boats at their building. Where the boat is used elsewhere local rules govern; changes are for a licensed marine trade.',
];
