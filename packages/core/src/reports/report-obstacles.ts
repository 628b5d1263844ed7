import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { openSlots } from '@garboard/trade/catalogue/slots';
import type { Day } from '@garboard/trade/due-dates';
import { decidedFindingStates, surveyMayBeIssued } from '@garboard/trade/states';
import { type FindingState, type SurveyState, type System, systemLabels } from '@garboard/trade/vocabulary';
import { writtenDay } from '../clearance/extension-rows.ts';
import { wrongState } from '../problems.ts';
import type { FindingRow } from './snapshot-rows.ts';

/** What of a survey decides whether its report can be issued. */
export interface Issuable {
  state: string;
  attendances: readonly unknown[];
}

const issuingStates = 'attended, drafting, in review or issued';

/** @throws Refusal `wrong-state` saying what is missing from the record before the full report can be issued. */
export function refuseUnreadyReport(survey: Issuable, findings: readonly FindingRow[], issuedOn: Day): void {
  if (!surveyMayBeIssued(survey.state as SurveyState)) {
    throw wrongState(
      `A report is issued of a survey that is ${issuingStates}; this one is “${survey.state}”. Move it on first.`,
    );
  }
  if (survey.attendances.length === 0) {
    throw wrongState(
      'No attendance is recorded. Add the day, the place and the condition of the vessel first.',
    );
  }
  if (findings.length === 0) {
    throw wrongState('There are no findings to report. Record at least one, if only a note.');
  }
  const wordless = findings.find((f) => f.observed.trim() === '' || f.recommendation.trim() === '');
  if (wordless) {
    const missing = wordless.observed.trim() === '' ? 'what was observed' : 'what to do about it';
    throw wrongState(
      `Finding ${wordless.number} (${wordless.title}) does not say ${missing}. Write it first.`,
    );
  }
  const early = findings.find((f) => wasSetEarly(f, issuedOn));
  if (early?.dueOnSet) {
    const due = writtenDay(early.dueOnSet.toISOString().slice(0, 10));
    throw wrongState(
      `Finding ${early.number} (${early.title}) is due on ${due}, which is before the report is issued. Set a later day, or none.`,
    );
  }
  for (const finding of findings) {
    const { title, observed, consequence, recommendation } = finding;
    const open = openSlots([title, observed, consequence, recommendation]);
    if (open.length > 0) {
      const gaps = open.map((slot) => `{${slot}}`).join(', ');
      throw wrongState(
        `Finding ${finding.number} (${title}) still has gaps from the catalogue: ${gaps}. Complete its texts first.`,
      );
    }
  }
}

/** Whether a due date set by hand lies before this issue; one that was issued so before keeps running. */
function wasSetEarly({ dueOnSet, issued }: FindingRow, issuedOn: Day): boolean {
  const day = dueOnSet?.toISOString().slice(0, 10) ?? null;
  const before = (issued as SnapshotFinding | null)?.dueOnSet ?? null;
  return day !== null && day !== before && day < issuedOn;
}

/** @throws Refusal `wrong-state` naming every system of which nobody has said how far it was reached. */
export function refuseUnanswered(unanswered: readonly System[]): void {
  if (unanswered.length === 0) return;
  const names = unanswered.map((system) => systemLabels[system]).join('; ');
  throw wrongState(
    `Coverage is not answered for ${unanswered.length === 1 ? '1 system' : `${unanswered.length} systems`}: ${names}. Say of each how far it was reached, or that it is not fitted.`,
  );
}

/** @throws Refusal `wrong-state` naming a photo of which no printable picture could be made. */
export function refuseFailedPhotos(photos: readonly { state: string; fileName: string }[]): void {
  const failed = photos.find((p) => p.state === 'failed');
  if (failed) {
    throw wrongState(
      `The photo ${failed.fileName} could not be read when its print was made. Take it out or upload it again.`,
    );
  }
}

/** @throws Refusal `wrong-state` while findings that require clearing are not decided, or when there are none. */
export function refuseEarlyClearance(clearing: readonly FindingRow[]): void {
  if (clearing.length === 0) {
    throw wrongState(
      'No issued finding requires clearing, so there is nothing a clearance letter could confirm.',
    );
  }
  const open = clearing.filter((f) => !decidedFindingStates.includes(f.state as FindingState)).length;
  if (open > 0) {
    const which =
      open === 1 ? '1 finding that requires clearing is' : `${open} findings that require clearing are`;
    throw wrongState(
      `${which} not decided yet, of ${clearing.length}. A status letter can be issued in the meantime.`,
    );
  }
}
