import { parseAbsolute, parseDateTime, toZoned } from '@internationalized/date';

/** A day and a time of the clock where the boat lies, as an instant. */
export function instantThere(day: string, time: string, timeZone: string): string {
  return toZoned(parseDateTime(`${day}T${time}`), timeZone).toAbsoluteString();
}

/** The day and the time of the clock there, as fields of a form take them. */
export function clockThere(instant: string, timeZone: string): { day: string; time: string } {
  const zoned = parseAbsolute(instant, timeZone);
  const two = (n: number) => String(n).padStart(2, '0');
  return {
    day: `${zoned.year}-${two(zoned.month)}-${two(zoned.day)}`,
    time: `${two(zoned.hour)}:${two(zoned.minute)}`,
  };
}
