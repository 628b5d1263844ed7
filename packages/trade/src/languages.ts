/** The languages in which people are written to. */
export const languages = ['en-GB', 'en-US', 'de', 'fr', 'es'] as const;
export type Language = (typeof languages)[number];

/** Each by its own name, as people look for it. */
export const languageLabels: Record<Language, string> = {
  'en-GB': 'English (4 May 2026)',
  'en-US': 'English (May 4, 2026)',
  de: 'Deutsch',
  fr: 'Français',
  es: 'Español',
};

/** The language kept for a person; English for one that this version doesn't know. */
export const languageOf = (kept: string): Language => languages.find((l) => l === kept) ?? 'en-GB';
