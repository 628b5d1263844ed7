import type { CheckedWorksheet } from '../support/check.ts';
import { gasLeakDownChecks } from './gas/gas-leak-down.ts';

/** The checks of every worksheet, in the order of the registry. */
export const allChecks: CheckedWorksheet[] = [
  // Gas and ventilation
  gasLeakDownChecks,
  // Electrical
  // Corrosion
  // Structure and flooding
  // Propulsion
  // Rig and ground tackle
  // Rules
  // Stability
  // Value
  // Risk
];
