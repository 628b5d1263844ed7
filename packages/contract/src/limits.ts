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
