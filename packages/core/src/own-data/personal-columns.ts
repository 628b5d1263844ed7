/**
 * Every column that says whose a row is, or who did something. A test compares it with the database, so that neither a
 * person's export nor an erasure forgets a table.
 *
 * - `owned`: the person's own; exported, and removed by an erasure.
 * - `named`: what they did or were part of, the firm's to keep; exported. The name beside it is taken out by an erasure.
 */
export const owned: readonly (readonly [table: string, column: string, title: string])[] = [
  ['sessions', 'person_id', 'Where you are signed in'],
  ['second_factors', 'person_id', 'Second factor'],
  ['recovery_codes', 'person_id', 'Recovery codes'],
  ['api_keys', 'person_id', 'Keys for programs'],
  ['calendar_feeds', 'person_id', 'Calendar address'],
  ['webhook_deliveries', 'person_id', 'What your systems were sent'],
  ['webhook_endpoints', 'person_id', 'Systems of yours that are told'],
  ['notices', 'person_id', 'What you were told'],
  ['mails', 'person_id', 'Messages mailed to you'],
  ['notice_preferences', 'person_id', 'How you want to be told'],
  ['saved_views', 'person_id', 'Saved views'],
  ['idempotency_keys', 'person_id', 'Requests lately repeated'],
  ['finding_yards', 'person_id', 'Findings you were asked to put right'],
  ['visit_asks', 'person_id', 'Visits you were asked to'],
  ['former_ids', 'person_id', 'Ids you had in another installation'],
  ['parties', 'person_id', 'Surveys you are party to'],
  ['firm_members', 'person_id', 'Firms you work for'],
];

export const named: readonly (readonly [
  table: string,
  column: string,
  name: string | null,
  title: string,
])[] = [
  ['events', 'actor_id', null, 'What you did, as the record has it'],
  ['clearances', 'sent_by_id', 'sent_by_name', 'Evidence you sent'],
  ['clearances', 'decided_by_id', 'decided_by_name', 'Evidence you decided on'],
  ['due_extensions', 'by_id', 'by_name', 'Time you gave'],
  ['finding_comments', 'by_id', 'by_name', 'Your comments'],
  ['re_inspections', 'by_id', 'by_name', 'Visits you recorded'],
  ['reviews', 'asked_by_id', 'asked_by_name', 'Reviews you asked for'],
  ['reviews', 'reviewer_id', 'reviewer_name', 'Reviews asked of you'],
  ['reviews', 'decided_by_id', 'decided_by', 'Reviews you decided'],
  ['review_comments', 'by_id', 'by_name', 'Your comments in reviews'],
  ['reports', 'requested_by_id', 'requested_by', 'Documents you asked for'],
  ['share_links', 'made_by_id', 'made_by_name', 'Links you made'],
  ['survey_imports', 'made_by_id', 'made_by_name', 'Surveys you brought in'],
  ['firm_exports', 'asked_by_id', 'asked_by', 'Archives of a firm you asked for'],
  ['firm_catalogue_entries', 'saved_by_id', 'saved_by', 'Catalogue entries you saved'],
  ['firm_terms', 'saved_by_id', 'saved_by', 'Terms you saved'],
  // What binds two sides keeps the name of who agreed to it.
  ['quotations', 'decided_by_id', null, 'Quotations you decided on'],
  ['photos', 'uploaded_by_id', null, 'Photos you added'],
  ['surveys', 'surveyor_id', null, 'Surveys you sign'],
];

/** Names written without an id; taken out where they are the person's and nobody else's in that firm. */
export const bareNames: readonly (readonly [table: string, column: string])[] = [
  ['firm_catalogue_entries', 'retired_by'],
  ['findings', 'withdrawn_by'],
  ['deleted_findings', 'deleted_by'],
  ['review_comments', 'settled_by'],
  ['signing_keys', 'added_by'],
  ['invoice_payments', 'recorded_by'],
  ['survey_releases', 'word_by'],
];
