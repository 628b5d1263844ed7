import type { WorksheetSpec } from './types.ts';

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
];
