/** What a surveyor sees of a finding at a visit after the report. */
export const outcomeLabels = {
  'put-right': 'Put right',
  'not-put-right': 'Not put right',
  'as-it-is': 'May stay as it is, within a limit',
} as const;

export type Outcome = keyof typeof outcomeLabels;
export const outcomes = Object.keys(outcomeLabels) as [Outcome, ...Outcome[]];
