/** Factors of safety by service, as printed with the shaft formula; they include the weakening by the keyway. */
export const services = {
  'light-petrol': { words: 'Light petrol yacht (factor 2)', factor: 2 },
  yacht: { words: 'Average yacht (factor 3)', factor: 3 },
  'long-range': { words: 'Long-range motor cruiser (factor 3.5 to 4; 4 taken)', factor: 4 },
  racing: { words: 'High-performance racing (factor 4 to 5; 5 taken)', factor: 5 },
  patrol: { words: 'Pilot or patrol boat (factor 5 to 6; 6 taken)', factor: 6 },
  passenger: { words: 'Inspected passenger vessel (factor 7.5)', factor: 7.5 },
} as const;

export type Service = keyof typeof services;

export const serviceWords = Object.fromEntries(
  Object.entries(services).map(([key, service]) => [key, service.words]),
) as Record<Service, string>;

/** The least factor printed for any service: below it no service is met. */
export const leastPrintedFactor = 2;

/** Usual stock of shaft bar: inches, and mm. Common practice. */
export const stockInches = [
  0.75, 0.875, 1, 1.125, 1.25, 1.375, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 3.75, 4, 4.5, 5, 5.5, 6,
];
export const stockMillimetres = [
  20, 22, 25, 28, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100, 110, 120, 130, 140, 150,
];

/** The next stock size that is not smaller, if there is one. */
export const nextStock = (needed: number, stock: readonly number[]): number | undefined =>
  stock.find((size) => size >= needed);

/** Propeller diameter over this is about the shaft's diameter, by number of blades: the quick rule, 3 blades 14. */
export const quickRuleDivisor = 14;
