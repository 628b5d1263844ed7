import type { WorksheetSpec } from './types.ts';

/** Readings of one plate, in mm. */
const plateReadings = (plate: string, thicknesses: readonly number[]) =>
  thicknesses.map((thickness) => ({ plate, thickness }));

/** Worksheets filled in during the surveys; their readings are those that the findings tell. */
export const worksheets: WorksheetSpec[] = [
  {
    survey: 'larkspindle-insurance',
    finding: 'lk-cutless',
    kind: 'shaft-wear',
    title: 'Propeller shaft in the P-bracket',
    inputs: {
      originalDiameter: 30,
      wornDiameter: 29.8,
      resolution: 0.02,
      place: 'bearing',
      surface: 'smooth',
      play: 1.6,
      clearanceTable: 'share-5',
      power: 21,
      shaftSpeed: 1280,
      material: 'stainless-18',
    },
    verdict: 'unsatisfactory',
  },
  {
    survey: 'larkspindle-insurance',
    finding: 'lk-swage',
    kind: 'rigging-wire',
    title: 'Port cap shroud',
    inputs: {
      diameter: 8,
      construction: '1x19',
      grade: '316',
      waters: 'coastal',
      displacement: 6700,
      shroudsPerSide: 2,
      age: 14,
      brokenWires: 'no',
      terminalFault: 'yes',
    },
    verdict: 'unsatisfactory',
  },
  {
    survey: 'larkspindle-insurance',
    finding: 'lk-deck-core',
    kind: 'moisture-map',
    title: 'Starboard side deck at the genoa track',
    inputs: {
      // Four rows from inboard out to the toe rail, every 100 mm from the after end of the track forward.
      readings: [
        [
          10, 10, 11, 11, 9, 9, 9, 9, 10, 9, 14, 12, 13, 12, 12, 13, 14, 12, 14, 14, 13, 9, 10, 9, 9, 10, 10,
          11, 10, 9, 9, 9,
        ],
        [
          10, 9, 11, 10, 9, 9, 9, 11, 10, 12, 27, 26, 26, 26, 26, 28, 26, 26, 25, 28, 27, 12, 9, 10, 9, 11,
          10, 11, 11, 10, 9, 9,
        ],
        [
          9, 9, 11, 10, 10, 10, 11, 11, 9, 12, 26, 25, 25, 26, 28, 24, 25, 27, 24, 27, 25, 14, 11, 11, 10, 11,
          11, 11, 10, 9, 11, 10,
        ],
        [
          10, 9, 9, 11, 9, 10, 10, 10, 11, 10, 13, 12, 13, 14, 12, 14, 13, 13, 12, 12, 12, 11, 10, 9, 11, 9,
          10, 10, 10, 9, 10, 11,
        ],
      ],
      spacingAlong: 0.1,
      spacingAcross: 0.125,
      aftmost: 2.6,
      starboardmost: -1.5,
      dryReadings: [9, 11, 10, 9, 11, 10, 9, 11, 9, 11, 10, 9].map((reading) => ({ reading })),
    },
    verdict: 'attention',
  },
  {
    survey: 'larkspindle-insurance',
    finding: 'lk-shackle',
    kind: 'chain-wear',
    title: 'First 5 m of the anchor chain',
    inputs: {
      newDiameter: 10,
      links: [
        { place: 'at the anchor', first: 9.6, second: 9.7 },
        { place: '1 m', first: 9.7, second: 9.7 },
        { place: '3 m', first: 9.8, second: 9.7 },
        { place: '5 m', first: 9.9, second: 9.9 },
      ],
      resolution: 0.1,
      damage: 'no',
    },
    verdict: 'satisfactory',
  },
  {
    survey: 'pepper-condition',
    finding: 'pp-blower',
    kind: 'petrol-ventilation',
    title: 'Engine space with the duct as found',
    inputs: {
      engine: 'petrol-starter',
      netVolume: { value: 1.05, unit: 'm3' },
      ratedCapacity: 130,
      measuredOutput: 0,
      intakeLow: 'no',
      intakeAboveBilge: 'yes',
      label: 'yes',
    },
    verdict: 'unsatisfactory',
  },
  {
    survey: 'oxbow-pre-purchase',
    finding: 'ox-hull-anodes',
    kind: 'hull-potential',
    title: 'Hull afloat, lead on the stern gland',
    inputs: { hull: 'steel', reading: -612, electrode: 'silver-kcl', water: 'brackish', resolution: 1 },
    verdict: 'unsatisfactory',
  },
  {
    survey: 'oxbow-pre-purchase',
    finding: 'ox-plating',
    kind: 'plate-thickness',
    title: 'Bottom plating, frames 8 to 16',
    inputs: {
      plates: [
        { plate: 'Port bilge, frames 11–13', original: 6 },
        { plate: 'Port bottom, frames 8–10', original: 6 },
        { plate: 'Port bottom, frames 14–16', original: 6 },
        { plate: 'Starboard bilge, frames 11–13', original: 6 },
      ],
      readings: [
        ...plateReadings('Port bilge, frames 11–13', [4.4, 4.6, 4.3]),
        ...plateReadings('Port bottom, frames 8–10', [5.6, 5.7, 5.5, 5.8, 5.6]),
        ...plateReadings('Port bottom, frames 14–16', [5.5, 5.4, 5.6, 5.7, 5.5]),
        ...plateReadings('Starboard bilge, frames 11–13', [5.4, 5.3, 5.5, 5.6, 5.4]),
      ],
    },
    verdict: 'unsatisfactory',
  },
];
