import type { AnyWorksheet } from './core/worksheet.ts';
import { gasLeakDown } from './gas/gas-leak-down.ts';

/** Every worksheet there is, in the order they are offered. */
export const worksheets: readonly AnyWorksheet[] = [
  // Gas and ventilation
  gasLeakDown,
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

const byKind = new Map(worksheets.map((worksheet) => [worksheet.kind, worksheet]));

/** The worksheet of a kind, if there is one. */
export const findWorksheet = (kind: string): AnyWorksheet | undefined => byKind.get(kind);
