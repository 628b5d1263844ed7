import type { ReportSnapshot, SnapshotFinding } from '@garboard/contract/report-snapshot';
import { changesBetween, nothingChanged } from '@garboard/core/reports/changes-between';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleFinding, sampleId, sampleReport } from '../report/sample-snapshot.ts';

type Full = ReportSnapshot & { kind: 'full' };
const base = sampleReport(0);
const report = (findings: SnapshotFinding[], revision = 1): Full => ({
  ...base,
  kind: 'full',
  revision,
  findings,
});

/** One edit of each part that a report prints, and the name it is told by. */
const edits: Record<string, Partial<SnapshotFinding>> = {
  title: { title: 'Another title' },
  system: { system: 'steering' },
  'what was seen': { observed: 'Seen otherwise.' },
  'why it matters': { consequence: 'For another reason.' },
  'what to do': { recommendation: 'Do something else.' },
  urgency: { urgency: 'next-layup' },
  'time limit': { withinDays: 17, dueOn: '2031-01-01' },
  harm: { harms: ['pollution'] },
  references: { references: ['ISO 9999'] },
  state: { state: 'returned' },
  cost: { cost: { low: 1, high: 2, currency: 'EUR', basis: 'opinion', note: '' } },
};
const parts = Object.keys(edits);

interface Step {
  id: number;
  fate: 'kept' | 'added' | 'dropped' | 'withdrawn' | 'edited';
  edited: string[];
}
/** What becomes of findings from one revision to the next. */
const history: fc.Arbitrary<Step[]> = fc.uniqueArray(
  fc.record({
    id: fc.integer({ min: 1, max: 60 }),
    fate: fc.constantFrom('kept', 'added', 'dropped', 'withdrawn', 'edited'),
    edited: fc.uniqueArray(fc.constantFrom(...parts), { minLength: 1 }),
  }),
  { selector: (s) => s.id, maxLength: 25 },
);

const finding = (id: number): SnapshotFinding => ({
  ...sampleFinding(id),
  ...{ id: sampleId(id), system: 'hull', urgency: 'note', withinDays: null, dueOn: null },
});
function apart(steps: Step[]): { before: Full; after: Full } {
  const old = steps.filter((s) => s.fate !== 'added').map((s) => finding(s.id));
  const now = steps.flatMap((s): SnapshotFinding[] => {
    if (s.fate === 'dropped') return [];
    const f = finding(s.id);
    if (s.fate === 'withdrawn') return [{ ...f, state: 'withdrawn' }];
    return [s.fate === 'edited' ? Object.assign(f, ...s.edited.map((part) => edits[part])) : f];
  });
  return { before: report(old, 4), after: report(now, 5) };
}
const numbers = (list: readonly { number: number }[]) => list.map((f) => f.number);
const of = (steps: Step[], ...fates: Step['fate'][]) =>
  steps
    .filter((s) => fates.includes(s.fate))
    .map((s) => s.id)
    .sort((a, b) => a - b);

describe('what differs between two revisions', () => {
  it('is exactly what became of each finding, by its parts', () => {
    fc.assert(
      fc.property(history, (steps) => {
        const { before, after } = apart(steps);
        const changes = changesBetween(before, after);
        expect(changes.against).toBe(4);
        expect(numbers(changes.added)).toEqual(of(steps, 'added'));
        expect(numbers(changes.withdrawn)).toEqual(of(steps, 'dropped', 'withdrawn'));
        expect(numbers(changes.changed)).toEqual(of(steps, 'edited'));
        for (const { number, what } of changes.changed) {
          const step = steps.find((s) => s.id === number);
          expect([...what].sort()).toEqual([...(step?.edited ?? [])].sort());
        }
        expect(changes.record).toEqual([]);
        expect(nothingChanged(changes)).toBe(steps.every((s) => s.fate === 'kept'));
      }),
    );
  });

  it('is nothing against itself, also after it was kept as JSON and in any order', () => {
    fc.assert(
      fc.property(history, fc.func(fc.integer()), (steps, place) => {
        const { after } = apart(steps);
        const kept: Full = JSON.parse(JSON.stringify(after));
        kept.findings.sort((a, b) => place(a.id) - place(b.id));
        expect(nothingChanged(changesBetween(kept, after))).toBe(true);
      }),
    );
  });

  it('turned round adds what it withdrew and changes the same parts', () => {
    fc.assert(
      fc.property(history, (steps) => {
        const { before, after } = apart(steps);
        const [there, back] = [changesBetween(before, after), changesBetween(after, before)];
        expect(numbers(back.added)).toEqual(numbers(there.withdrawn));
        expect(numbers(back.withdrawn)).toEqual(numbers(there.added));
        expect(back.changed.map((f) => [f.number, f.what])).toEqual(
          there.changed.map((f) => [f.number, f.what]),
        );
      }),
    );
  });

  it('names measurements with their finding, others and the rest around the findings, and gives reasons', () => {
    const [one, two] = [finding(1), finding(2)];
    const before = report([one, two]);
    const worksheet = sampleReport(1, 0).worksheets[0];
    const measured = worksheet ?? {
      ...{ id: sampleId(90), findingId: one.id, title: 'Gas' },
      result: { verdict: 'satisfactory' } as unknown as Full['worksheets'][number]['result'],
    };
    const after: Full = {
      ...report([one]),
      survey: { ...before.survey, scope: 'Another scope.' },
      present: ['The owner'],
      worksheets: [
        { ...measured, id: sampleId(91), findingId: one.id },
        { ...measured, id: sampleId(92), findingId: null },
      ],
    };
    const reasons = new Map([[two.id, 'Misread.']]);
    const changes = changesBetween(before, after, reasons);
    expect(changes.changed).toEqual([{ number: 1, title: one.title, what: ['measurements'] }]);
    expect(changes.withdrawn).toEqual([{ number: 2, title: two.title, reason: 'Misread.' }]);
    expect(changes.record).toEqual(['people present', 'scope', 'measurements of the vessel']);
  });
});
