/**
 * Tables with rows of a firm that its archive leaves out, and why. Whoever brings a firm in is told the same by the
 * manifest.
 */
export const leftOutTables: Record<string, string> = {
  api_keys: 'Keys for programs are secrets and stay: make new ones.',
  share_links:
    'Links to reports lead to the old address and stay: make new ones. The record tells which there were.',
  share_viewings: 'Openings of links stay with the links.',
  webhook_endpoints: 'Other systems that are told are kept with a secret each and stay: add them anew.',
  webhook_deliveries: 'What other systems were sent stays with them.',
  signing_keys: 'The private key never leaves: add the P12 file again. The certificate is in the manifest.',
  photo_uploads: 'Uploads under way are between a browser and the old address.',
  survey_imports: 'Sheets being brought in: what was made of them is in the archive.',
  import_photos: 'Sheets being brought in: what was made of them is in the archive.',
  firm_catalogue_words: 'Made anew from the firm’s catalogue entries.',
  firm_exports: 'Archives that were made are not part of an archive.',
};

/** Columns of tables that are in the archive, left out of it, and why. */
export const leftOutColumns: Record<string, string> = {
  'people.password_hash': 'A secret: people get in by a link and choose a password anew.',
  'people.mail_problem': 'What the old mail server said.',
  'people.mail_problem_at': 'What the old mail server said.',
  'firm_catalogue_entries.search': 'Made anew from the words.',
  'firm_catalogue_entries.standards': 'Made anew from the words.',
  'notices.mail_after': 'Nobody is mailed twice of the same.',
  'notices.mail_id': 'Nobody is mailed twice of the same.',
  'reports.claim': 'Of a document that is being made.',
  'reports.heartbeat_at': 'Of a document that is being made.',
  'reports.preview': 'Drafts to look at are left out.',
};

/** Which rows of a table are left out besides, as an SQL condition of those that aren't (alias t). */
export const keptRows: Record<string, string> = {
  // One that is still being made is asked for anew.
  reports: `NOT t.preview AND t.state IN ('issued', 'failed')`,
  report_photos: `EXISTS (SELECT FROM reports r
    WHERE r.id = t.report_id AND NOT r.preview AND r.state IN ('issued', 'failed'))`,
};
