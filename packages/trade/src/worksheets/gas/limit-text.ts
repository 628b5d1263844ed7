import { type Quantity, withUnit } from '../core/quantity.ts';
import { convert, type Unit } from '../core/units.ts';
import { formatNumber } from '../core/working.ts';

/** A limit in its source's unit, and in parentheses in the unit the surveyor measured in: `73.9 cm² (11.5 in²)`. */
export function limitText(value: number, unit: Unit, measuredAs: Quantity | undefined, digits = 4): string {
  const own = withUnit(formatNumber(value, digits), unit);
  if (!measuredAs || measuredAs.unit === unit) return own;
  return `${own} (${withUnit(formatNumber(convert(value, unit, measuredAs.unit), digits), measuredAs.unit)})`;
}
