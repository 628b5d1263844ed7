import { execFileSync } from 'node:child_process';
import { mkdir, writeFile } from 'node:fs/promises';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { repositoryRoot } from '@garboard/platform/paths';

/** What one round of one side gave. Times are in milliseconds. */
export interface Round {
  /** In the comparison's unit: requests a second, megabytes a second, milliseconds, bytes. */
  value: number;
  p50?: number;
  p99?: number;
}

export interface Comparison {
  /** What is measured, such as `findings of a survey`. */
  what: string;
  /** Surveys of the office, photos of the report, or whatever the figure depends on. */
  size?: number;
  /** Such as `req/s`; says what `value` is. */
  unit: string;
  /** Whether less is better, as with times; then the ratio is the floor's value by ours, so that 1 is the floor always. */
  lessIsBetter?: boolean;
  /** What the ratio has to reach. */
  target?: number;
  /** How many times the floor’s 99th percentile ours may be. */
  targetP99?: number;
  ours: () => Promise<Round>;
  floor: () => Promise<Round>;
}

/** A comparison's outcome: medians over the rounds, and how far the rounds lie apart. */
export interface Result {
  part: string;
  what: string;
  size: number | null;
  unit: string;
  ours: number;
  /** Null for a figure that has no floor. */
  floor: number | null;
  ratio: number | null;
  /** Lowest and highest ratio of a round; of a figure without a floor, lowest and highest value. */
  spread: [number, number];
  p50: number | null;
  p99: number | null;
  /** The median of the rounds' ratios of ours by the floor's. */
  p99Ratio: number | null;
  rounds: number;
  target: string | null;
  met: boolean | null;
}

/** The outcome of a figure that is held against a limit, not a floor. */
export interface Figure {
  what: string;
  size?: number;
  unit: string;
  values: readonly number[];
  /** The median may be no less, or no more, than this. */
  atLeast?: number;
  atMost?: number;
}

/** What a part of the bench is given. */
export interface Bench {
  /** Surveys of the offices to be made, smallest first. */
  sizes: readonly number[];
  rounds: number;
  /** How many ask at once; 50 unless said otherwise. */
  connections: number;
  /** For how long a round asks, in seconds. */
  seconds: number;
  /**
   * Measures ours and the floor of each comparison in turn, round by round, so that whatever else the machine does
   * meets all of them alike.
   */
  compare(comparisons: readonly Comparison[]): Promise<Result[]>;
  /** Writes down a figure held against a limit. */
  figure(figure: Figure): Result;
  /** A fact about the run, such as `postgres`: its version. */
  note(name: string, value: string | number): void;
  /** Says on stderr how far it is. */
  say(line: string): void;
}

/** A part of the bench: `npm run bench -- <name>`. */
export type Part = (bench: Bench) => Promise<void>;

/** The middle value; of an even number the mean of the two in the middle. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  const low = sorted[Math.ceil(half) - 1] ?? Number.NaN;
  const high = sorted[Math.floor(half)] ?? Number.NaN;
  return (low + high) / 2;
}

const spreadOf = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];
const medianOf = (values: readonly (number | undefined)[]): number | null => {
  const known = values.filter((value) => value !== undefined);
  return known.length > 0 ? median(known) : null;
};

function judge(
  part: string,
  comparison: Comparison,
  rounds: readonly { ours: Round; floor: Round }[],
): Result {
  const { what, size, unit, lessIsBetter, target, targetP99 } = comparison;
  const ratios = rounds.map(({ ours, floor }) =>
    lessIsBetter ? floor.value / ours.value : ours.value / floor.value,
  );
  const ratio = median(ratios);
  const p99Ratio = medianOf(
    rounds.map(({ ours, floor }) => (ours.p99 && floor.p99 ? ours.p99 / floor.p99 : undefined)),
  );
  const fast = target === undefined || ratio >= target;
  const even = targetP99 === undefined || p99Ratio === null || p99Ratio <= targetP99;
  const targets = [
    target === undefined ? null : `≥ ${target}`,
    targetP99 === undefined ? null : `p99 ≤ ${targetP99}×`,
  ].filter((one) => one !== null);
  return {
    part,
    what,
    size: size ?? null,
    unit,
    ours: median(rounds.map(({ ours }) => ours.value)),
    floor: median(rounds.map(({ floor }) => floor.value)),
    ratio,
    spread: spreadOf(ratios),
    p50: medianOf(rounds.map(({ ours }) => ours.p50)),
    p99: medianOf(rounds.map(({ ours }) => ours.p99)),
    p99Ratio,
    rounds: rounds.length,
    target: targets.join(', ') || null,
    met: targets.length > 0 ? fast && even : null,
  };
}

/** A bench for one part; what it finds is added to `results` and `notes`. */
export function openBench(
  part: string,
  options: Pick<Bench, 'sizes' | 'rounds' | 'seconds'> & Partial<Pick<Bench, 'connections'>>,
  found: { results: Result[]; notes: Record<string, string | number> },
): Bench {
  const say = (line: string) => process.stderr.write(`${part}: ${line}\n`);
  return {
    connections: 50,
    ...options,
    say,
    note: (name, value) => {
      found.notes[name] = value;
    },
    async compare(comparisons) {
      const measured = comparisons.map((comparison) => ({
        comparison,
        rounds: [] as { ours: Round; floor: Round }[],
      }));
      for (let round = 0; round < options.rounds; round++) {
        for (const { comparison, rounds } of measured) {
          // Who goes first changes from round to round: what is warm by then helps neither.
          const first = round % 2 === 0 ? await comparison.ours() : undefined;
          const floor = await comparison.floor();
          const ours = first ?? (await comparison.ours());
          rounds.push({ ours, floor });
          const ratio = (
            comparison.lessIsBetter ? floor.value / ours.value : ours.value / floor.value
          ).toFixed(2);
          say(
            `round ${round + 1}: ${comparison.what}${comparison.size ? ` (${comparison.size})` : ''}: ` +
              `${show(ours.value)} against ${show(floor.value)} ${comparison.unit} (${ratio})`,
          );
        }
      }
      const results = measured.map(({ comparison, rounds }) => judge(part, comparison, rounds));
      found.results.push(...results);
      return results;
    },
    figure({ what, size, unit, values, atLeast, atMost }) {
      const middle = median(values);
      const met = (atLeast === undefined || middle >= atLeast) && (atMost === undefined || middle <= atMost);
      const targets = [
        atLeast === undefined ? null : `≥ ${atLeast}`,
        atMost === undefined ? null : `≤ ${atMost}`,
      ].filter((one) => one !== null);
      const result: Result = {
        ...{ part, what, size: size ?? null, unit, ours: middle, floor: null, ratio: null },
        ...{ spread: spreadOf(values), p50: null, p99: null, p99Ratio: null, rounds: values.length },
        target: targets.join(', ') || null,
        met: targets.length > 0 ? met : null,
      };
      found.results.push(result);
      say(`${what}: ${show(middle)} ${unit}`);
      return result;
    },
  };
}

/** A number with three significant digits or all before the point, thousands apart. */
export function show(value: number | null, digits?: number): string {
  if (value === null || Number.isNaN(value)) return '';
  const size = Math.abs(value);
  const fixed = value.toFixed(digits ?? (size >= 100 ? 0 : size >= 10 ? 1 : 2));
  return fixed.replace(/\B(?=(\d{3})+(?!\d))/g, ' ');
}

/** The results as a table in Markdown, columns in line. */
export function tableOf(results: readonly Result[]): string {
  const head = [
    'What',
    'Size',
    'Ours',
    'Floor',
    'Unit',
    'Ratio',
    'Spread',
    'p50 ms',
    'p99 ms',
    'p99 ×',
    'Target',
    'Met',
  ];
  const rows = results.map((r) => [
    `${r.part}: ${r.what}`,
    r.size === null ? '' : show(r.size, 0),
    show(r.ours),
    show(r.floor),
    r.unit,
    show(r.ratio, 2),
    r.spread.map((value) => show(value, r.ratio === null ? undefined : 2)).join(' to '),
    show(r.p50, 1),
    show(r.p99, 1),
    show(r.p99Ratio, 2),
    r.target ?? '',
    r.met === null ? '' : r.met ? 'yes' : 'no',
  ]);
  const widths = head.map((name, at) => Math.max(name.length, ...rows.map((row) => (row[at] ?? '').length)));
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(' | ')} |`;
  return [line(head), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)].join('\n');
}

function commit(): string {
  const git = (...args: string[]) =>
    execFileSync('git', args, { cwd: repositoryRoot(), encoding: 'utf8' }).trim();
  try {
    return git('rev-parse', '--short', 'HEAD') + (git('status', '--porcelain') ? ' and changes' : '');
  } catch {
    return 'unknown';
  }
}

/** What was measured where, as `bench/results.json` keeps it. */
export async function keepResults(
  found: { results: readonly Result[]; notes: Record<string, string | number> },
  file = join(repositoryRoot(), 'bench', 'results.json'),
): Promise<void> {
  const machine = {
    cpu: cpus()[0]?.model ?? 'unknown',
    cores: cpus().length,
    node: process.version,
    commit: commit(),
    at: new Date().toISOString(),
    ...found.notes,
  };
  await mkdir(join(file, '..'), { recursive: true });
  await writeFile(file, `${JSON.stringify({ machine, results: found.results }, null, 2)}\n`);
}
