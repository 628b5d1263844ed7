// Everything a word can be made of, in any script; a dot only within a number, as in 183.425.
const wordForm = /[\p{L}\p{M}\p{N}]+(?:\.\p{N}+)*/gu;
const mostWords = 12;

/** What was typed, word by word, with codes such as `A-1` kept together as `a1`. */
export function soughtWords(typed: string): string[] {
  const lower = typed.normalize('NFC').toLowerCase();
  const joined = lower.includes('-') ? lower.replace(/(?<!\p{L})(\p{L})-(?=\d)/gu, '$1') : lower;
  return (joined.match(wordForm) ?? []).slice(0, mostWords);
}

/** How many slips of the pen a word of this length may have. */
const slipsAllowed = (length: number): number => (length < 6 ? 1 : length < 9 ? 2 : 3);

/**
 * Slips between a word written and one that exists: letters left out, put in, changed, or two exchanged. `begun` is
 * against the nearest beginning of it, for a word still being typed.
 */
export function slips(written: string, word: string): { whole: number; begun: number } {
  const across = word.length + 1;
  let before: number[] = [];
  let above = Array.from({ length: across }, (_, column) => column);
  for (let row = 1; row <= written.length; row++) {
    const here = [row];
    for (let column = 1; column < across; column++) {
      const [a, b] = [written[row - 1], word[column - 1]];
      let least = Math.min(
        at(here, column - 1) + 1,
        at(above, column) + 1,
        at(above, column - 1) + (a === b ? 0 : 1),
      );
      if (row > 1 && column > 1 && a === word[column - 2] && b === written[row - 2]) {
        least = Math.min(least, at(before, column - 2) + 1);
      }
      here.push(least);
    }
    [before, above] = [above, here];
  }
  return { whole: at(above, across - 1), begun: Math.min(...above) };
}

const at = (row: number[], column: number): number => row[column] ?? Number.POSITIVE_INFINITY;

/**
 * The words that a misspelt one can have been meant for, nearest first: at most three with equally few slips.
 *
 * @param unfinished whether it may be only the beginning of a word
 */
export function nearestWords(written: string, words: readonly string[], unfinished: boolean): string[] {
  const judged = words
    .map((word) => {
      const { whole, begun } = slips(written, word);
      return { word, slips: unfinished && written.length > 4 ? Math.min(whole, begun) : whole, whole };
    })
    .filter((candidate) => candidate.slips <= slipsAllowed(written.length))
    .sort(
      (a, b) =>
        a.slips - b.slips ||
        a.whole - b.whole ||
        likeness(written, b.word) - likeness(written, a.word) ||
        (a.word < b.word ? -1 : 1),
    );
  const least = judged[0]?.slips;
  return judged
    .filter((candidate) => candidate.slips === least)
    .slice(0, 3)
    .map((candidate) => candidate.word);
}

/** Among words with equally few slips: the same letters, then the same length, then the same end. */
function likeness(written: string, word: string): number {
  const letters = (text: string) => [...text].sort().join('');
  return (
    (letters(written) === letters(word) ? 4 : 0) +
    (written.length === word.length ? 2 : 0) +
    (written.at(-1) === word.at(-1) ? 1 : 0)
  );
}

/** The word with each pair of neighbours exchanged: a slip that trigrams hardly see in short words. */
export const exchanged = (word: string): string[] =>
  Array.from(
    { length: Math.max(0, word.length - 1) },
    (_, at) => word.slice(0, at) + word[at + 1] + word[at] + word.slice(at + 2),
  );
