import { isDeepStrictEqual } from 'node:util';
import type {
  ReportSnapshot,
  SnapshotChanges,
  SnapshotFinding,
  SurveyReportSnapshot,
} from '@garboard/contract/report-snapshot';

type Part<T> = readonly [name: string, read: (from: T) => unknown];
type Attached = SnapshotFinding & { measured: unknown };

/** The parts of a finding by the names under which the report prints them. */
const findingParts: readonly Part<Attached>[] = [
  ['number', (f) => f.number],
  ['title', (f) => f.title],
  ['system', (f) => f.system],
  ['what was seen', (f) => f.observed],
  ['why it matters', (f) => f.consequence],
  ['what to do', (f) => f.recommendation],
  ['items', (f) => (f.items ?? []).map(({ id, text }) => ({ id, text }))],
  ['urgency', (f) => f.urgency],
  ['time limit', (f) => [f.withinDays, f.dueOn]],
  ['harm', (f) => f.harms],
  ['references', (f) => f.references],
  ['photos', (f) => f.photos],
  ['measurements', (f) => f.measured],
  ['cost', (f) => f.cost],
  ['place on board', (f) => f.position],
  ['known defect', (f) => f.catalogueKey],
  ['state', (f) => f.state],
];

/** The parts of the report around its findings. */
const recordParts: readonly Part<SurveyReportSnapshot>[] = [
  ['vessel', (r) => [r.vessel, r.hullNumberDecoded]],
  [
    'survey',
    ({ survey: { purpose, requestedBy, clearanceDecidedBy } }) => [purpose, requestedBy, clearanceDecidedBy],
  ],
  ['attendances', (r) => r.attendances],
  ['people present', (r) => r.present],
  ['scope', (r) => r.survey.scope],
  ['limitations', (r) => r.survey.limitations],
  ['what was reached', (r) => r.coverage],
  ['equipment', (r) => r.inventory],
  ['measurements of the vessel', (r) => r.worksheets.filter((w) => w.findingId === null)],
  ['cover photo', (r) => r.leadPhoto],
  ['surveyor', (r) => r.surveyor],
];

// One of the two has been through JSON already, where what is undefined isn't there.
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value ?? null));
const differing = <T>(parts: readonly Part<T>[], before: T, after: T): string[] =>
  parts
    .filter(([, read]) => !isDeepStrictEqual(plain(read(before)), plain(read(after))))
    .map(([name]) => name);

/** The names of the parts in which a finding reads differently; its measurements aside. */
export const partsThatDiffer = (before: SnapshotFinding, after: SnapshotFinding): string[] =>
  differing(findingParts, { ...before, measured: null }, { ...after, measured: null });

const named = ({ number, title }: SnapshotFinding) => ({ number, title });

/**
 * What a report says differently from an earlier revision, by the findings' own ids: the order in which they stand
 * doesn't matter. One that is marked as withdrawn in the later counts as left out of it.
 *
 * @param reasons why findings were withdrawn, by id.
 */
export function changesBetween(
  before: ReportSnapshot & { kind: 'full' },
  after: ReportSnapshot & { kind: 'full' },
  reasons: ReadonlyMap<string, string> = new Map(),
): SnapshotChanges {
  const live = (snapshot: SurveyReportSnapshot) =>
    new Map(
      snapshot.findings
        .filter((f) => f.state !== 'withdrawn')
        .map((f) => [
          f.id,
          { ...f, measured: snapshot.worksheets.filter((w) => w.findingId === f.id) } satisfies Attached,
        ]),
    );
  const [old, now] = [live(before), live(after)];
  const byNumber = (a: { number: number }, b: { number: number }) => a.number - b.number;
  return {
    against: before.revision,
    added: [...now.values()]
      .filter((f) => !old.has(f.id))
      .map(named)
      .sort(byNumber),
    changed: [...now.values()]
      .flatMap((f) => {
        const earlier = old.get(f.id);
        const what = earlier ? differing(findingParts, earlier, f) : [];
        return what.length > 0 ? [{ ...named(f), what }] : [];
      })
      .sort(byNumber),
    withdrawn: [...old.values()]
      .filter((f) => !now.has(f.id))
      .map((f) => ({ ...named(f), reason: reasons.get(f.id) ?? '' }))
      .sort(byNumber),
    record: differing(recordParts, before, after),
  };
}

/** Whether nothing differs. */
export const nothingChanged = ({ added, changed, withdrawn, record }: SnapshotChanges): boolean =>
  added.length + changed.length + withdrawn.length + record.length === 0;
