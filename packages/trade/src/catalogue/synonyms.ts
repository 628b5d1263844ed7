/**
 * Words that stand for the same thing on either side of an ocean or in a yard's own speech, for the search. What only
 * one defect is called belongs into its entry's `alsoCalled`; these hold everywhere. Singular, lower case, single words.
 */
const groups: readonly (readonly string[])[] = [
  ['anode', 'zinc'],
  ['petrol', 'gasoline'],
  ['gas', 'lpg', 'propane'],
  ['aluminium', 'aluminum'],
  ['grp', 'fibreglass', 'fiberglass'],
  ['propeller', 'prop'],
  ['guardrail', 'lifeline', 'guardwire'],
  ['bottle', 'cylinder'],
  ['cooker', 'stove'],
  ['toilet', 'heads', 'wc'],
  ['earth', 'ground'],
  ['mould', 'mold'],
  ['bottlescrew', 'turnbuckle'],
  ['osmosis', 'blister'],
  ['liferaft', 'raft'],
  ['torch', 'flashlight'],
  ['rubber', 'elastomer'],
  ['echosounder', 'sounder'],
];

const byWord = new Map<string, readonly string[]>();
for (const group of groups) for (const word of group) byWord.set(word, group);

/** The word and those that stand for the same, the word itself first. Plurals in -s are found by their singular. */
export function withSynonyms(word: string): string[] {
  const group = byWord.get(word) ?? (word.endsWith('s') ? byWord.get(word.slice(0, -1)) : undefined);
  return [word, ...(group ?? []).filter((other) => other !== word && `${other}s` !== word)];
}
