import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { type System, systems, type Urgency, urgencies } from '@garboard/trade/vocabulary';

/** Findings in the order of their numbers. */
export function byNumber(findings: readonly SnapshotFinding[]): SnapshotFinding[] {
  return [...findings].sort((a, b) => a.number - b.number);
}

/** Findings grouped by urgency, most urgent first; groups without a finding are left out. */
export function byUrgency(findings: readonly SnapshotFinding[]) {
  return urgencies
    .map((urgency: Urgency) => ({
      urgency,
      findings: byNumber(findings.filter((f) => f.urgency === urgency)),
    }))
    .filter((group) => group.findings.length > 0);
}

/** Findings grouped by system, in the vocabulary's order; groups without a finding are left out. */
export function bySystem(findings: readonly SnapshotFinding[]) {
  return systems
    .map((system: System) => ({ system, findings: byNumber(findings.filter((f) => f.system === system)) }))
    .filter((group) => group.findings.length > 0);
}

/** Findings that ask for something to be done: neither notes nor withdrawn. The soonest due come first. */
export function recommendations(findings: readonly SnapshotFinding[]): SnapshotFinding[] {
  const rank = (f: SnapshotFinding) => urgencies.indexOf(f.urgency);
  return findings
    .filter((f) => f.urgency !== 'note' && f.state !== 'withdrawn')
    .sort((a, b) => rank(a) - rank(b) || (a.dueOn ?? '').localeCompare(b.dueOn ?? '') || a.number - b.number);
}
