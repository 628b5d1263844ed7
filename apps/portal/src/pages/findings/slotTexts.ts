import { fillSlots, slotsOf } from '@garboard/trade/catalogue/slots';

/** The texts of a finding that may have slots. */
export interface SlotTexts {
  title: string;
  observed: string;
  consequence: string;
  recommendation: string;
}

const fields = ['title', 'observed', 'consequence', 'recommendation'] as const;

export const textsOf = (draft: SlotTexts): SlotTexts => ({
  title: draft.title,
  observed: draft.observed,
  consequence: draft.consequence,
  recommendation: draft.recommendation,
});

/** The slots of all texts, each once, in their order. */
export const slotsIn = (texts: SlotTexts): string[] => [
  ...new Set(fields.flatMap((field) => slotsOf(texts[field]))),
];

/** The texts with other words in their slots; one that was edited since it was filled stays as it is. */
export function refilled(
  template: SlotTexts,
  now: SlotTexts,
  before: Readonly<Record<string, string>>,
  after: Readonly<Record<string, string>>,
): Partial<SlotTexts> {
  return Object.fromEntries(
    fields
      .filter((field) => now[field] === fillSlots(template[field], before))
      .map((field) => [field, fillSlots(template[field], after)]),
  );
}
