const formats = new Map<number, Intl.NumberFormat>();

/** A number as written on paper: so many significant digits (whole numbers whole), thousands grouped, a true minus. */
export function formatNumber(value: number, digits = 4): string {
  if (!Number.isFinite(value)) return value > 0 ? 'unlimited' : '–';
  const whole = Math.abs(value) < 1 ? 1 : Math.floor(Math.log10(Math.abs(value))) + 1;
  const significant = Math.min(15, Math.max(digits, whole));
  let format = formats.get(significant);
  if (!format) {
    format = new Intl.NumberFormat('en-GB', { maximumSignificantDigits: significant });
    formats.set(significant, format);
  }
  return format
    .format(value)
    .replace(/^-(?=.*[1-9])/, '−')
    .replace(/^-/, '');
}

/**
 * One line of working, as a surveyor would write it: `Absolute pressure: p + pₐ = 250 + 1 013 = 1 263 mbar`.
 * Leave out what the line has not: a reading has no formula, a comparison no numbers.
 */
export function line(what: string, ...steps: Array<string | undefined>): string {
  return `${what}: ${steps.filter((step) => step !== undefined && step !== '').join(' = ')}`;
}

const months = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** A calendar day as printed: `4 May 2026` for `2026-05-04`. */
export function dayText(day: string): string {
  const [year, month, date] = day.split('-').map(Number);
  return `${date} ${months[(month ?? 1) - 1]} ${year}`;
}
