import { type CheckedWorksheet, near, printed } from '../../support/check.ts';

type Thickness = number | { value: number; unit: string };

/** One plate with its readings. */
const plate = (original: Thickness, thicknesses: Thickness[], more: Record<string, unknown> = {}) => ({
  plates: [{ plate: 'A', original, ...more }],
  readings: thicknesses.map((thickness) => ({ plate: 'A', thickness })),
});
const inches = (value: number) => ({ value, unit: 'in' });
const eightTimes = (t: number) => [t, t, t, t, t, t, t, t];

const iims = 'IIMS president’s note on inland steel craft, iims.org.uk: limits quoted for 6 mm plate';

export const plateThicknessChecks: CheckedWorksheet = {
  kind: 'plate-thickness',
  checks: [
    {
      name: '6 mm plate at 4.8 mm has lost 20 %',
      source: iims,
      basis: 'printed',
      inputs: plate(6, [4.8, 4.8]),
      outputs: { worstMeanLoss: printed('20', '%') },
      verdict: 'attention',
    },
    {
      name: '6 mm plate at 3 mm has lost 50 %',
      source: iims,
      basis: 'printed',
      inputs: plate(6, [3, 3]),
      outputs: { worstMeanLoss: printed('50', '%') },
      verdict: 'unsatisfactory',
    },
    {
      name: 'pits of 1.4 mm in 6.8 mm leave 5.4 mm',
      source: 'canalworld.net topic 106370, hull sides 6.8 to 7.2 mm',
      basis: 'printed',
      inputs: plate(7.2, [6.8, 7.2], { pitDepth: 1.4 }),
      outputs: { leastUnderPit: printed('5.4', 'mm') },
    },
    {
      name: 'pits of 2 mm in plate as thin as 3.9 mm leave 1.9 mm',
      source: 'mcneilmarine.com, case study of a steel narrowboat, plating of 6 mm',
      basis: 'printed',
      inputs: plate(6, [3.9, 4.2], { pitDepth: 2 }),
      outputs: { leastUnderPit: printed('1.9', 'mm') },
      verdict: 'unsatisfactory',
    },
    {
      name: 'standard deviation of eight numbers: not the 2 of the whole, but 2.14 of a sample',
      source: 'textbook data 2, 4, 4, 4, 5, 5, 7, 9: squares sum to 32; √(32 / 7) by hand',
      basis: 'computed',
      inputs: plate(9, [2, 4, 4, 4, 5, 5, 7, 9]),
      outputs: { worstMean: printed('5', 'mm'), worstDeviation: near(Math.sqrt(32 / 7), 1e-9, 'mm') },
    },
    {
      name: 'the misprint of 70 % as 2 mm of 6 mm is 66.7 %',
      source: 'worked by hand: 100 × (6 − 2) / 6; the IIMS note prints 70 %',
      basis: 'computed',
      inputs: plate(6, [2, 2]),
      outputs: { worstMeanLoss: printed('66.67', '%') },
    },
    {
      name: '8.0 to 6.1 mm is 23.75 %',
      source: 'regulation facts 8, worked by hand: 100 × 1.9 / 8',
      basis: 'computed',
      inputs: plate(8, [6.1, 6.1]),
      outputs: { worstMeanLoss: 23.75 },
      verdict: 'unsatisfactory',
    },
    {
      name: '6.35 to 4.9 mm is 22.83 %',
      source: 'regulation facts 8, worked by hand: 100 × 1.45 / 6.35',
      basis: 'computed',
      inputs: plate(6.35, [4.9, 4.9]),
      outputs: { worstMeanLoss: printed('22.83', '%') },
    },
    {
      name: '0.375 to 0.300 in passes 20 % and fails the 15 % of a light hull',
      source: 'TB 55-1900-201-45/1 page E-12: above 15 % for hulls lighter than rule; 20.0 % worked by hand',
      basis: 'computed',
      inputs: {
        ...plate(inches(0.375), [inches(0.3), inches(0.3)]),
        renewalLoss: 15,
      },
      outputs: { worstMeanLoss: printed('20.0', '%'), renewals: 1 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'exactly 20 % in inches is not more than 20 %',
      source: 'class and MCA general figure of 20 %, as the IIMS note prints it',
      basis: 'edge',
      inputs: plate(inches(0.375), [inches(0.3), inches(0.3)]),
      outputs: { renewals: 0 },
      verdict: 'attention',
    },
    {
      name: 'just beyond 20 % is',
      source: 'class and MCA general figure of 20 %, as the IIMS note prints it',
      basis: 'edge',
      inputs: plate(6, [4.79, 4.79]),
      outputs: { renewals: 1 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'one reading of exactly 25 % is no local loss to follow up',
      source: 'TB 55-1900-201-45/1 paragraph 2-2a: up to 25 % locally',
      basis: 'edge',
      inputs: plate(8, [6, ...eightTimes(7.9)]),
      outputs: { greatestLoss: 25, renewals: 0 },
      verdict: 'satisfactory',
    },
    {
      name: 'one reading beyond 25 % is a flag, and no renewal',
      source: 'TB 55-1900-201-45/1 paragraph 2-2a: up to 25 % locally',
      basis: 'edge',
      inputs: plate(8, [5.9, ...eightTimes(7.9)]),
      outputs: { renewals: 0 },
      verdict: 'attention',
    },
    {
      name: 'exactly 70 % left under a pit is not more than 70 %',
      source: '2011 ESP Code annex A part B 8.2.1.3: greater than 70 % of the as-built thickness',
      basis: 'edge',
      inputs: plate(10, [9.5, 9.5], { pitDepth: 2.5 }),
      outputs: { leastUnderPitShare: 70 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'more than 70 % is',
      source: '2011 ESP Code annex A part B 8.2.1.3: greater than 70 % of the as-built thickness',
      basis: 'edge',
      inputs: plate(10, [9.5, 9.5], { pitDepth: 2.4 }),
      verdict: 'satisfactory',
    },
    {
      name: '15 % pitted needs no pit depth',
      source: '2011 ESP Code annex A part B 8.2.1.1: higher than 15 %',
      basis: 'edge',
      inputs: plate(10, [9.5, 9.5], { pitted: 15 }),
      verdict: 'satisfactory',
    },
    {
      name: 'above 15 % it can’t be judged without',
      source: '2011 ESP Code annex A part B 8.2.1.1: higher than 15 %',
      basis: 'edge',
      inputs: plate(10, [9.5, 9.5], { pitted: 16 }),
      verdict: 'indeterminate',
    },
    {
      name: 'substantial corrosion at exactly 75 % of the margin isn’t reached',
      source: 'definition of substantial corrosion: in excess of 75 % of allowable margins',
      basis: 'edge',
      inputs: plate(10, [8.5, 8.5]),
      outputs: { worstMeanLoss: 15 },
      verdict: 'satisfactory',
    },
    {
      name: 'beyond it is',
      source: 'definition of substantial corrosion: in excess of 75 % of allowable margins',
      basis: 'edge',
      inputs: plate(10, [8.4, 8.4]),
      verdict: 'attention',
    },
    {
      name: 'one reading is too few for a plate, two are enough',
      source: 'MSC guidance to A.744: at least two points on each plate',
      basis: 'edge',
      inputs: plate(6, [5.9]),
      verdict: 'indeterminate',
    },
    {
      name: 'a reading twice the original is left out of the mean',
      source: 'own rule: thicker than the original by more than 0.3 mm',
      basis: 'edge',
      inputs: plate(6, [5.9, 5.7, 11.8]),
      outputs: { doubtfulReadings: 1, worstMean: 5.8, readings: 2 },
      verdict: 'attention',
    },
    {
      name: 'thicker by exactly the allowance counts, as no loss',
      source: 'own rule: thicker than the original by more than 0.3 mm',
      basis: 'edge',
      inputs: plate(6, [6.3, 6.3]),
      outputs: { doubtfulReadings: 0, worstMeanLoss: 0 },
      verdict: 'satisfactory',
    },
    {
      name: 'a reading of a plate that isn’t listed, and a pit deeper than the plate, are refused',
      source: 'own rule',
      basis: 'edge',
      inputs: {
        plates: [{ plate: 'A', original: 6, pitDepth: 7 }],
        readings: [
          { plate: 'A', thickness: 5 },
          { plate: 'B', thickness: 5 },
        ],
      },
      refused: ['plates/0/pitDepth', 'readings/1/plate'],
    },
    {
      name: 'a thickness of nil is refused',
      source: 'own rule',
      basis: 'edge',
      inputs: plate(6, [0]),
      refused: ['readings/0/thickness'],
    },
  ],
  unverified: [
    'NVIC 7-68 itself was not seen; its notes are as TB 55-1900-201-45/1 appendix E reprints them, and its general percentage page was not found.',
    'The limits for pits come from a code for bulk carriers and from class guidance for naval ships, seen in excerpts; for boats they are a yardstick and a firm’s choice.',
    'A limit on the mean loss of the whole hull girder was not found and is not judged.',
  ],
};
