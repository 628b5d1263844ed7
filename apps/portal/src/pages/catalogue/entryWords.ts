import type { CatalogueOrigin } from '@garboard/contract/catalogue';

/** Whose words an entry is read in. */
export const originWords: Record<CatalogueOrigin, string> = {
  garboard: 'Garboard’s',
  firm: 'Our own entry',
  'firm-wording': 'Our wording',
};
