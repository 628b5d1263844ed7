/**
 * The words of the trade, as keys that travel in JSON and the labels a person reads.
 * The keys are a contract between every part of Garboard; labels may be reworded freely.
 */

export const systemLabels = {
  hull: 'Hull exterior',
  deck: 'Deck and superstructure',
  'cored-structure': 'Cored structures',
  'keel-ballast': 'Keel and ballast',
  'through-hulls': 'Through-hull fittings and seacocks',
  steering: 'Steering',
  'shaft-propeller': 'Shafts and propellers',
  'stern-drive-outboard': 'Stern drives and outboards',
  engine: 'Engines',
  exhaust: 'Exhaust',
  fuel: 'Fuel',
  gas: 'Gas (LPG)',
  'dc-electrical': 'DC electrical',
  'ac-electrical': 'AC shore power',
  'corrosion-protection': 'Corrosion protection',
  bilge: 'Bilge pumping',
  'rig-sails': 'Rig and sails',
  'ground-tackle': 'Ground tackle',
  'fire-safety': 'Fire safety',
  'life-saving': 'Life-saving equipment',
  'navigation-lights': 'Navigation lights',
  'plumbing-heads': 'Plumbing and heads',
  access: 'Access for maintenance',
  accommodation: 'Accommodation',
  electronics: 'Electronics',
} as const;

export const purposeLabels = {
  'pre-purchase': 'Pre-purchase survey',
  insurance: 'Insurance survey',
  valuation: 'Valuation',
  damage: 'Damage survey',
  condition: 'Condition survey',
  're-inspection': 'Re-inspection',
} as const;

export const surveyStateLabels = {
  enquiry: 'Enquiry',
  booked: 'Booked',
  attended: 'Attended',
  drafting: 'Drafting',
  'in-review': 'In review',
  issued: 'Issued',
  closed: 'Closed',
  cancelled: 'Cancelled',
} as const;

export const urgencyLabels = {
  'before-use': 'Before next use',
  'within-days': 'Within a stated time',
  'next-layup': 'At the next haul-out or lay-up',
  note: 'Note for the owner',
} as const;

export const harmLabels = {
  flooding: 'Flooding',
  'fire-explosion': 'Fire or explosion',
  shock: 'Electric shock',
  poisoning: 'Poisoning',
  'structural-failure': 'Structural failure',
  'rig-failure': 'Rig failure',
  'loss-of-control': 'Loss of control',
  injury: 'Injury',
  pollution: 'Pollution',
  unlawful: 'Against the law',
  deterioration: 'Deterioration',
} as const;

export const findingStateLabels = {
  draft: 'Draft',
  open: 'Open',
  'evidence-sent': 'Evidence sent, awaiting decision',
  returned: 'Evidence returned',
  cleared: 'Cleared',
  'accepted-as-is': 'Accepted as it is',
  withdrawn: 'Withdrawn',
} as const;

export const decisionLabels = {
  accept: 'Accept',
  return: 'Return',
  'accept-as-is': 'Accept as it is',
} as const;

export const clearanceStateLabels = {
  sent: 'Sent, awaiting decision',
  accepted: 'Accepted',
  returned: 'Returned',
  'accepted-as-is': 'Accepted as it is',
  // Of several items some were accepted and some returned.
  'part-accepted': 'Accepted in part',
  // The finding was withdrawn before anybody decided.
  lapsed: 'No longer needed',
} as const;

export const firmRoleLabels = { principal: 'Principal', surveyor: 'Surveyor', office: 'Office' } as const;

export const partyRoleLabels = {
  owner: 'Owner',
  buyer: 'Buyer',
  broker: 'Broker',
  insurer: 'Insurer',
  lender: 'Lender',
  yard: 'Yard',
} as const;

export const attendanceConditionLabels = {
  ashore: 'Ashore',
  afloat: 'Afloat',
  'under-way': 'Under way',
} as const;

export const reportKindLabels = {
  full: 'Survey report',
  recommendations: 'Recommendations',
  summary: 'Summary',
  'clearance-letter': 'Clearance letter',
  'status-letter': 'Status letter',
  're-inspection': 'Re-inspection addendum',
} as const;

export const reportStateLabels = {
  queued: 'Waiting to be made',
  rendering: 'Being made',
  // A preview that can be looked at; it is never issued.
  ready: 'Ready to look at',
  issued: 'Issued',
  failed: 'Could not be made',
} as const;

export const reviewStateLabels = {
  asked: 'Waiting for the reviewer',
  approved: 'Approved',
  'sent-back': 'Sent back',
  withdrawn: 'No longer asked for',
} as const;

export const reviewDecisionLabels = { approve: 'Approve', 'send-back': 'Send back' } as const;

/** Usual hull materials; a vessel's may also be told in other words. */
export const hullMaterialLabels = {
  grp: 'Glass-reinforced plastic (GRP)',
  'grp-cored': 'Cored GRP',
  wood: 'Wood',
  steel: 'Steel',
  aluminium: 'Aluminium alloy',
  ferrocement: 'Ferrocement',
  composite: 'Other composite',
  other: 'Other',
} as const;

/** Usual kinds of propulsion; a vessel's may also be told in other words. */
export const propulsionLabels = {
  'inboard-diesel': 'Inboard diesel',
  'inboard-petrol': 'Inboard petrol',
  'stern-drive-diesel': 'Stern drive, diesel',
  'stern-drive-petrol': 'Stern drive, petrol',
  outboard: 'Outboard',
  electric: 'Electric',
  hybrid: 'Hybrid',
  none: 'None',
} as const;

export const verdictLabels = {
  satisfactory: 'Satisfactory',
  attention: 'Needs attention',
  unsatisfactory: 'Unsatisfactory',
  indeterminate: 'Can’t be judged',
} as const;

export const worksheetGroupLabels = {
  gas: 'Gas and ventilation',
  electrical: 'Electrical',
  corrosion: 'Corrosion',
  structure: 'Structure and flooding',
  propulsion: 'Propulsion',
  rig: 'Rig and ground tackle',
  rules: 'Rules',
  stability: 'Stability',
  value: 'Value',
  risk: 'Risk',
} as const;

/** The label of a key; words of the surveyor's own stay as they are. For lists that can't name everything. */
export const labelOf = (labels: Readonly<Record<string, string>>, value: string): string =>
  labels[value] ?? value;

/** The keys of a label record as a non-empty tuple, in their order of display, for zod's enum. */
function keys<T extends Record<string, string>>(labels: T): [keyof T & string, ...(keyof T & string)[]] {
  return Object.keys(labels) as [keyof T & string, ...(keyof T & string)[]];
}

export const systems = keys(systemLabels);
export const purposes = keys(purposeLabels);
export const surveyStates = keys(surveyStateLabels);
/** Most urgent first. */
export const urgencies = keys(urgencyLabels);
export const harms = keys(harmLabels);
export const findingStates = keys(findingStateLabels);
export const decisions = keys(decisionLabels);
export const clearanceStates = keys(clearanceStateLabels);
export const firmRoles = keys(firmRoleLabels);
export const partyRoles = keys(partyRoleLabels);
export const attendanceConditions = keys(attendanceConditionLabels);
export const reportKinds = keys(reportKindLabels);
export const reportStates = keys(reportStateLabels);
export const reviewStates = keys(reviewStateLabels);
export const reviewDecisions = keys(reviewDecisionLabels);
export const verdicts = keys(verdictLabels);
export const worksheetGroups = keys(worksheetGroupLabels);

export type System = keyof typeof systemLabels;
export type Purpose = keyof typeof purposeLabels;
export type SurveyState = keyof typeof surveyStateLabels;
export type Urgency = keyof typeof urgencyLabels;
export type Harm = keyof typeof harmLabels;
export type FindingState = keyof typeof findingStateLabels;
export type Decision = keyof typeof decisionLabels;
export type ClearanceState = keyof typeof clearanceStateLabels;
export type FirmRole = keyof typeof firmRoleLabels;
export type PartyRole = keyof typeof partyRoleLabels;
export type AttendanceCondition = keyof typeof attendanceConditionLabels;
export type ReportKind = keyof typeof reportKindLabels;
export type ReportState = keyof typeof reportStateLabels;
export type ReviewState = keyof typeof reviewStateLabels;
export type ReviewDecision = keyof typeof reviewDecisionLabels;
export type Verdict = keyof typeof verdictLabels;
export type WorksheetGroup = keyof typeof worksheetGroupLabels;
