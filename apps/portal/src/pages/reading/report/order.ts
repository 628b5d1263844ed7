import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { systems, urgencies } from '@garboard/trade/vocabulary';
import { formatDay } from '../../../ui/format.ts';

const byNumber = (a: SnapshotFinding, b: SnapshotFinding) => a.number - b.number;

/** Findings by urgency, most urgent first; groups without one are left out. */
export const byUrgency = (findings: readonly SnapshotFinding[]) =>
  urgencies
    .map((urgency) => ({ urgency, findings: findings.filter((f) => f.urgency === urgency).sort(byNumber) }))
    .filter((group) => group.findings.length > 0);

/** Findings by system in the usual order; groups without one are left out. */
export const bySystem = (findings: readonly SnapshotFinding[]) =>
  systems
    .map((system) => ({ system, findings: findings.filter((f) => f.system === system).sort(byNumber) }))
    .filter((group) => group.findings.length > 0);

/** Findings that ask for work, the soonest due first. */
export const recommendations = (findings: readonly SnapshotFinding[]) =>
  findings
    .filter((f) => f.urgency !== 'note' && f.state !== 'withdrawn')
    .sort(
      (a, b) =>
        urgencies.indexOf(a.urgency) - urgencies.indexOf(b.urgency) ||
        (a.dueOn ?? '').localeCompare(b.dueOn ?? '') ||
        byNumber(a, b),
    );

/** By when a finding is to be put right, in words. */
export function dueWords({ urgency, dueOn }: SnapshotFinding): string {
  if (urgency === 'before-use') return 'Before next use';
  if (urgency === 'next-layup') return 'At the next haul-out or lay-up';
  return dueOn ? formatDay(dueOn) : '';
}
