import { checked, choice, fallback, measure, optional } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import type { Values } from '../core/worksheet.ts';
import { lightLabels } from './navigation-lights-rules.ts';

const span = { unit: 'm', units: ['ft'] } as const;
const place = { unit: 'm', units: ['ft', 'in', 'cm'], min: 0, max: 200 } as const;

/** What is asked of a vessel and her lights. */
export const inputs = {
  rules: choice({
    label: 'Rules',
    choices: { international: 'International', inland: 'United States inland' },
  }),
  vessel: choice({
    label: 'Vessel',
    choices: {
      power: 'Power-driven',
      auxiliary: 'Sailing vessel with an engine',
      sail: 'Sailing vessel without an engine',
      oars: 'Under oars',
    },
  }),
  length: measure({ label: 'Length overall', above: 0, max: 500, ...span }),
  breadth: optional(measure({ label: 'Greatest breadth', above: 0, max: 80, ...span })),
  maximumSpeed: optional(
    measure({
      label: 'Maximum speed',
      help: 'Matters under 7 m, by the international rules',
      unit: 'kn',
      units: ['km/h', 'mph', 'm/s'],
      min: 0,
      max: 100,
    }),
  ),
  fitted: rows({
    label: 'Lights fitted',
    help: 'One row a light; an all-round light that serves under power and at anchor is one',
    each: 'light',
    min: 0,
    max: 30,
    columns: {
      light: choice({ label: 'Light', choices: lightLabels }),
      range: optional(
        measure({
          label: 'Range marked',
          help: 'On the lantern or its certificate; for a sailing lantern that of its white sector',
          unit: 'nmi',
          units: ['km', 'm'],
          min: 0,
          max: 30,
        }),
      ),
      intensity: optional(measure({ label: 'Intensity', unit: 'cd', min: 0, max: 100_000 })),
      arc: optional(
        measure({ label: 'Arc seen', help: 'If it was measured', unit: 'deg', min: 0, max: 360 }),
      ),
      lights: fallback(checked({ label: 'Lights' }), 'not-examined'),
      unobstructed: fallback(
        checked({ label: 'Shows over its whole arc', help: 'Nothing in the way, screens in place' }),
        'not-examined',
      ),
    },
  }),
  mastheadHeight: optional(
    measure({
      label: 'Height of the forward masthead light',
      help: '20 m and over: above the uppermost continuous deck; 12 to 20 m: above the gunwale',
      ...place,
    }),
  ),
  mastheadAboveSidelights: optional(
    measure({ label: 'Masthead or all-round light above the sidelights', ...place }),
  ),
  afterMastheadAbove: optional(measure({ label: 'After masthead light above the forward one', ...place })),
  mastheadSpacing: optional(
    measure({ label: 'Distance between the masthead lights', help: 'Along the vessel', ...place }),
  ),
  mastheadFromStem: optional(measure({ label: 'Forward masthead light from the stem', ...place })),
};

export type Given = Values<typeof inputs>;
