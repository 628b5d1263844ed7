const dayFormat = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

/** A calendar day (`2026-05-04`) as `4 May 2026`. Anything else comes back unchanged. */
export function formatDay(day: string): string {
  const date = new Date(`${day}T00:00:00Z`);
  return Number.isNaN(date.getTime()) ? day : dayFormat.format(date);
}

/**
 * An instant (ISO 8601) as `4 May 2026, 14:05` in an IANA time zone, or in the reader's own without one. `short` months
 * are for places that hold no more.
 */
export function formatInstant(instant: string, timeZone?: string, month: 'long' | 'short' = 'long'): string {
  return new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month,
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZone: knownTimeZone(timeZone),
  })
    .format(new Date(instant))
    .replace(' at ', ', ');
}

/** An instant (ISO 8601) as the day it fell on in a time zone. */
export function formatInstantDay(instant: string, timeZone?: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: knownTimeZone(timeZone),
  }).format(new Date(instant));
}

/** A browser older than the zone's name must still show a time. */
function knownTimeZone(timeZone: string | undefined): string | undefined {
  try {
    return timeZone && new Intl.DateTimeFormat('en-GB', { timeZone }).resolvedOptions().timeZone;
  } catch {
    return undefined;
  }
}

/** Today's calendar day in a time zone, `YYYY-MM-DD`; in the reader's own without one. */
export function today(timeZone?: string): string {
  return new Intl.DateTimeFormat('sv-SE', { timeZone: knownTimeZone(timeZone), dateStyle: 'short' }).format(
    new Date(),
  );
}

/** Bytes as `840 kB` or `3.2 MB`, in powers of ten. */
export function formatBytes(bytes: number): string {
  if (bytes < 1_000_000) return `${Math.max(1, Math.round(bytes / 1000))} kB`;
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/** A limit in bytes as whole megabytes of 1024 × 1024, as limits are set. */
export function megabytes(bytes: number): string {
  return `${Math.floor(bytes / 2 ** 20)} MB`;
}

/** Metres as `10.40 m (34 ft 1 in)`. */
export function formatLength(metres: number): string {
  const inches = Math.round(metres / 0.0254);
  return `${metres.toFixed(2)} m (${Math.floor(inches / 12)} ft ${inches % 12} in)`;
}

/** Kilograms as `5,200 kg (11,464 lb)`. */
export function formatMass(kilograms: number): string {
  const number = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 0 });
  return `${number.format(kilograms)} kg (${number.format(kilograms / 0.45359237)} lb)`;
}

/** `1 photo`, `2 photos`; an irregular plural is given whole. */
export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[]): string {
  return new Intl.ListFormat('en-GB', { type: 'conjunction' }).format(items);
}

/** A text made safe to use in a link: web addresses only, else `null`. */
export function httpLink(text: string): string | null {
  return /^https?:\/\/[^\s]+$/i.test(text) ? text : null;
}
