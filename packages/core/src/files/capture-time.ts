import exifr from 'exifr';

interface ExifTags {
  DateTimeOriginal?: unknown;
  OffsetTimeOriginal?: unknown;
  /** 1 to 8, as the standard numbers them. */
  Orientation?: unknown;
}

/** The few tags we use, of a picture's path or of an Exif block by itself; undefined when they can't be read. */
export async function readExif(source: string | Buffer): Promise<ExifTags | undefined> {
  const pick = ['DateTimeOriginal', 'OffsetTimeOriginal', 'Orientation'];
  // A file without EXIF, or with broken EXIF, is still a good photo.
  return exifr.parse(source, { pick, reviveValues: false, translateValues: false }).catch(() => undefined);
}

/**
 * When a photo was taken, by its EXIF data; null when it doesn't say so or says nonsense.
 *
 * @param timeZone IANA zone in which the camera's clock is read when the file names no offset.
 */
export async function readCaptureTime(
  source: string | Buffer,
  timeZone: string,
  now: Date,
): Promise<Date | null> {
  const tags = await readExif(source);
  if (typeof tags?.DateTimeOriginal !== 'string') return null;
  const taken = captureInstant(tags.DateTimeOriginal, tags.OffsetTimeOriginal, timeZone);
  if (!taken) return null;
  // Clocks that were never set, and those that run ahead by more than a time zone, say nothing.
  const plausible = taken.getUTCFullYear() >= 1990 && taken.getTime() < now.getTime() + 36 * 3_600_000;
  return plausible ? taken : null;
}

/** The instant of an EXIF date such as `2026:05:04 10:11:12`, with its offset such as `+02:00` or in a zone. */
export function captureInstant(date: string, offset: unknown, timeZone: string): Date | null {
  const m = /^(\d{4})[:-](\d\d)[:-](\d\d)[ T](\d\d):(\d\d):(\d\d)/.exec(date);
  if (!m) return null;
  const wall = Date.parse(`${m[1]}-${m[2]}-${m[3]}T${m[4]}:${m[5]}:${m[6]}Z`);
  if (Number.isNaN(wall)) return null;
  const shift = typeof offset === 'string' ? /^([+-])(\d\d):(\d\d)/.exec(offset) : null;
  if (shift) {
    const minutes = Number(shift[2]) * 60 + Number(shift[3]);
    return new Date(wall - (shift[1] === '-' ? -1 : 1) * minutes * 60_000);
  }
  // The offset at the wrong side of a clock change can be an hour off; asking again at the result settles it.
  const first = wall - zoneOffset(wall, timeZone);
  return new Date(wall - zoneOffset(first, timeZone));
}

/** Milliseconds by which a zone's clocks are ahead of UTC at an instant. */
function zoneOffset(at: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  }).formatToParts(at);
  const part = (type: string) => Number(parts.find((p) => p.type === type)?.value);
  const wall = Date.UTC(
    part('year'),
    part('month') - 1,
    part('day'),
    part('hour'),
    part('minute'),
    part('second'),
  );
  return wall - Math.floor(at / 1000) * 1000;
}
