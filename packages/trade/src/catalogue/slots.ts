/** The gaps in a catalogue text that a surveyor completes: `{location}`. Each with what is asked and an example. */
export const slots = {
  location: { label: 'Where', example: 'in the engine space, starboard side forward' },
  side: { label: 'Side', example: 'port' },
  item: { label: 'Which item', example: 'the raw-water intake seacock' },
  count: { label: 'How many', example: 'three' },
  extent: { label: 'How much', example: 'over about 0.4 m²' },
  size: { label: 'Size', example: '19 mm' },
  reading: { label: 'Reading', example: '−780 mV' },
  material: { label: 'Material', example: 'brass' },
  date: { label: 'Date marked', example: 'March 2019' },
  age: { label: 'Age', example: '17 years' },
} as const satisfies Record<string, { label: string; example: string }>;

export type Slot = keyof typeof slots;

const slotForm = /\{([a-z]+)\}/g;

/** The slots of a text, each once, in order. Also those that aren't known. */
export const slotsOf = (text: string): string[] => [
  ...new Set([...text.matchAll(slotForm)].map((match) => match[1] ?? '')),
];

/** A text with its slots filled; those without words stay, so that what is still open is seen. */
export const fillSlots = (text: string, words: Readonly<Record<string, string>>): string =>
  text.replace(slotForm, (whole, slot: string) => words[slot]?.trim() || whole);

/** What is asked for a slot; one of a firm's own making is asked for by its name. */
export function slotAsked(key: string): { key: string; label: string; example: string } {
  const known = Object.hasOwn(slots, key) ? slots[key as Slot] : undefined;
  return { key, ...(known ?? { label: key.charAt(0).toUpperCase() + key.slice(1), example: '' }) };
}

/** The known slots that texts still have open; braces around other words are nobody's gap. */
export const openSlots = (texts: readonly string[]): string[] => [
  ...new Set(texts.flatMap(slotsOf).filter((slot) => Object.hasOwn(slots, slot))),
];
