/**
 * Where a firm's job stands: the states of a survey, and among those issued the ones with recommendations still to be
 * cleared, which are `in-clearance`.
 */
export const jobStageLabels = {
  enquiry: 'Enquiry',
  booked: 'Booked',
  attended: 'Attended',
  drafting: 'Drafting',
  'in-review': 'In review',
  issued: 'Issued, nothing left to clear',
  'in-clearance': 'In clearance',
  closed: 'Closed',
  cancelled: 'Cancelled',
} as const;
export type JobStage = keyof typeof jobStageLabels;
export const jobStages = Object.keys(jobStageLabels) as [JobStage, ...JobStage[]];

/** Who has to do the next thing in a job. */
export const jobWaitLabels = {
  office: 'Office',
  client: 'Client',
  surveyor: 'Surveyor',
  reviewer: 'Reviewer',
  owner: 'Owner',
  insurer: 'Insurer',
} as const;
export type JobWait = keyof typeof jobWaitLabels;
export const jobWaits = Object.keys(jobWaitLabels) as [JobWait, ...JobWait[]];
