import type { CatalogueEntry } from './entry.ts';

/** Every known defect, by system in the order of the vocabulary. */
export const catalogue: readonly CatalogueEntry[] = [];

const byKey = new Map(catalogue.map((entry) => [entry.key, entry]));

/** The entry of a key, if there is one. */
export const findEntry = (key: string): CatalogueEntry | undefined => byKey.get(key);
