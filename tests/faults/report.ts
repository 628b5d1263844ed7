import { cpus, loadavg } from 'node:os';
import type { Behaviour } from './ledger.ts';
import type { Run } from './run.ts';

/** What came of a group of faults. */
export interface Outcome {
  faults: number;
  acknowledged: number;
  readyAgain: Run['readyAgain'];
  violations: [sentence: string, times: number][];
  behaviour?: Behaviour;
}

export const outcomeOf = ({ ledger, readyAgain, installation }: Run, faults: number): Outcome => {
  for (const [name, { ownEnds }] of Object.entries(installation.services))
    for (const printed of ownEnds)
      ledger.violation(`The ${name} ended by itself, having printed:\n${printed}`);
  const { acknowledged, behaviour, violations } = ledger;
  return { faults, acknowledged, readyAgain, behaviour, violations: [...violations] };
};

const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[list.length >> 1] ?? 0;
const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;

/** Gathers the outcomes of a run and prints them. */
export class Report {
  readonly #rows: (Outcome & { of: string })[] = [];

  add(profile: string, group: string, outcome: Outcome): void {
    this.#rows.push({ of: `${profile}: ${group}`, ...outcome });
  }

  get violations(): number {
    return this.#rows.reduce((sum, { violations }) => sum + violations.length, 0);
  }

  print(): void {
    const table = this.#rows.map(({ of, faults, acknowledged, readyAgain, violations, behaviour }) => {
      const all = readyAgain.map(({ ms }) => ms);
      const own = readyAgain.map(({ ms, waitedMs }) => ms - waitedMs);
      return {
        group: of,
        ...{ faults, acknowledged, violations: violations.length },
        ...{ 'sent again': behaviour?.repeated ?? 0, 'asked to wait': behaviour?.askedToWait ?? 0 },
        'ready, median': seconds(median(all)),
        'ready, most': seconds(Math.max(0, ...all)),
        'most, own time': seconds(Math.max(0, ...own)),
      };
    });
    console.log();
    console.table(table);
    const cores = cpus().length;
    console.log(
      `Own time leaves out waiting for a processor. Load now: ${loadavg()[0]?.toFixed(1)} on ${cores} cores.`,
    );
    for (const { of, violations } of this.#rows)
      for (const [sentence, times] of violations)
        console.log(`${of}: ${sentence}${times > 1 ? ` (${times} times)` : ''}`);
    const [faults, acknowledged] = (['faults', 'acknowledged'] as const).map((name) =>
      this.#rows.reduce((sum, row) => sum + row[name], 0),
    );
    console.log(
      `${faults} faults, ${acknowledged} pieces of work acknowledged, ${this.violations} violations.`,
    );
  }
}
