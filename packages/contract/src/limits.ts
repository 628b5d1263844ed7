// Apart from the schemas: the portal loads these, and zod nowhere.

/** Limits of an upload, also told to people before they choose files. */
export const uploadLimits = {
  photoBytes: 40 * 1024 * 1024,
  documentBytes: 25 * 1024 * 1024,
  pixels: 120_000_000,
  side: 20_000,
  filesPerRequest: 200,
} as const;

/** The most bytes a P12 file may have; one with a long chain has about 10 kB. */
export const maxP12Bytes = 100_000;

/** How long a one-time link can be used once it was mailed, and how long a new session needs no password for changes. */
export const linkMinutes = 15;

/** Days for which a link to a report may be made at most. */
export const longestShareDays = 90;

/** Letters and digits of a passcode at least. */
export const shortestPasscode = 6;

/** Limits of what a survey is brought in from. */
export const importLimits = {
  csvBytes: 5 * 1024 * 1024,
  zipBytes: 4 * 1024 ** 3,
  /** Of everything in the ZIP together. */
  unpackedBytes: 12 * 1024 ** 3,
  rows: 1000,
  photos: 2000,
  columns: 100,
} as const;
