import { type CheckedWorksheet, printed } from '../../support/check.ts';

const fifteenPsi = {
  startPressure: { value: 15, unit: 'psi' },
  endPressure: { value: 14, unit: 'psi' },
  holdTime: 5,
  gaugeResolution: { value: 0.1, unit: 'psi' },
  startTemperature: 25,
  endTemperature: 15,
  noLiquid: true,
};
const cold = { startPressure: 500, endPressure: 500, holdTime: 3, gaugeResolution: 5, noLiquid: true };

export const gasLeakDownChecks: CheckedWorksheet = {
  kind: 'gas-leak-down',
  checks: [
    {
      name: '15 psi trapped, cooling from 25 to 15 °C, loses 1 psi without a leak',
      source: 'gas law in absolute units, worked by hand: 29.696 × 288.15 / 298.15 − 14.696',
      basis: 'computed',
      inputs: fifteenPsi,
      outputs: { expectedPressure: printed('14.00', 'psi') },
      verdict: 'satisfactory',
    },
    {
      name: 'exactly 3 minutes is long enough',
      source: 'NFPA 54 annex C: at least 3 minutes',
      basis: 'edge',
      inputs: cold,
      verdict: 'attention',
    },
    {
      name: '2 min 59 s is not',
      source: 'NFPA 54 annex C: at least 3 minutes',
      basis: 'edge',
      inputs: { ...cold, holdTime: { value: 179, unit: 's' } },
      verdict: 'indeterminate',
    },
  ],
};
