import { convert, symbolOf, type Unit } from './units.ts';
import { formatNumber } from './working.ts';

/**
 * A measured value with its unit, as it was given. Kept in that unit, so that a limit printed in the same unit is
 * compared without a conversion's rounding.
 */
export class Quantity {
  readonly value: number;
  readonly unit: Unit;

  constructor(value: number, unit: Unit) {
    this.value = value;
    this.unit = unit;
  }

  /** The value in another unit of the same kind. @throws for a unit of another kind (a mistake in the worksheet). */
  in(unit: Unit): number {
    return convert(this.value, this.unit, unit);
  }

  /** The same quantity in another unit. */
  to(unit: Unit): Quantity {
    return new Quantity(this.in(unit), unit);
  }

  /** As printed, `12.5 mm`, to so many significant digits. */
  text(digits = 4): string {
    return withUnit(formatNumber(this.value, digits), this.unit);
  }
}

/** Joins a printed number and its unit: a space between, none before `%` and `°`. */
export function withUnit(number: string, unit: Unit): string {
  const symbol = symbolOf(unit);
  if (symbol === '') return number;
  return symbol === '%' || symbol === '°' ? `${number}${symbol}` : `${number} ${symbol}`;
}
