import type { ClearanceState, Decision, FindingState, SurveyState, Urgency } from './vocabulary.ts';

/** Where a survey may go by hand. `issued` is reached by issuing the report, never by editing the state. */
const surveyMoves: Record<SurveyState, readonly SurveyState[]> = {
  enquiry: ['booked', 'attended', 'drafting', 'cancelled'],
  booked: ['enquiry', 'attended', 'drafting', 'cancelled'],
  attended: ['booked', 'drafting', 'cancelled'],
  drafting: ['attended', 'in-review', 'cancelled'],
  'in-review': ['drafting', 'cancelled'],
  issued: ['closed'],
  closed: ['issued'],
  cancelled: ['enquiry'],
};

/** Whether staff may move a survey from one state to another by hand. */
export function surveyMayMove(from: SurveyState, to: SurveyState): boolean {
  return from === to || surveyMoves[from].includes(to);
}

/** States in which the survey's record may still be edited. */
export function surveyIsEditable(state: SurveyState): boolean {
  return state !== 'closed' && state !== 'cancelled';
}

/** States from which a report may be issued; from `issued` it becomes the next revision. */
export function surveyMayBeIssued(state: SurveyState): boolean {
  return ['attended', 'drafting', 'in-review', 'issued'].includes(state);
}

/** Whether a finding of this urgency must be cleared; a firm may add `next-layup`. */
export function requiresClearing(urgency: Urgency, layupRequiresClearing: boolean): boolean {
  return (
    urgency === 'before-use' ||
    urgency === 'within-days' ||
    (urgency === 'next-layup' && layupRequiresClearing)
  );
}

/** States in which evidence may be sent for a finding. */
export const awaitsEvidence: readonly FindingState[] = ['open', 'returned'];

/** States in which nothing more is asked of the owner. */
export const decidedFindingStates: readonly FindingState[] = ['cleared', 'accepted-as-is', 'withdrawn'];

/** What a decision on evidence makes of the clearance and of its finding. */
export const afterDecision: Record<Decision, { clearance: ClearanceState; finding: FindingState }> = {
  accept: { clearance: 'accepted', finding: 'cleared' },
  return: { clearance: 'returned', finding: 'returned' },
  'accept-as-is': { clearance: 'accepted-as-is', finding: 'accepted-as-is' },
};
