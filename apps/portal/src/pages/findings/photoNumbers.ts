const part = /^(\d{1,5})(?:[-–](\d{1,5}))?$/;

/** Numbers written as `3, 7-9`, each once in the order written; `unread` are the parts that name no photo. */
export function numbersIn(text: string, most: number): { numbers: number[]; unread: string[] } {
  const numbers = new Set<number>();
  const unread: string[] = [];
  for (const piece of text
    .replace(/\s*[-–]\s*/g, '-')
    .split(/[\s,;]+/)
    .filter(Boolean)) {
    const match = part.exec(piece);
    const from = Number(match?.[1]);
    const to = Number(match?.[2] ?? match?.[1]);
    if (!match || from < 1 || to > most || from > to) unread.push(piece);
    else for (let number = from; number <= to; number += 1) numbers.add(number);
  }
  return { numbers: [...numbers], unread };
}

/** The same the other way round: runs of three and more are drawn together. */
export function numbersOf(numbers: readonly number[]): string {
  const runs: number[][] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run && run.at(-1) === number - 1) run.push(number);
    else runs.push([number]);
  }
  return runs.flatMap((run) => (run.length > 2 ? [`${run[0]}-${run.at(-1)}`] : run.map(String))).join(', ');
}
