/**
 * Columns that name a file of the store by its SHA-256. A test compares these lists with the database: a new column
 * with a hash must be put into one of them.
 */
export const fileColumns = [
  ['photos', 'sha256'],
  ['photos', 'thumb_hash'],
  ['photos', 'screen_hash'],
  ['photos', 'print_hash'],
  ['photo_prints', 'sha256'],
  ['report_photos', 'thumb_hash'],
  ['report_photos', 'screen_hash'],
  ['report_photos', 'print_hash'],
  ['reports', 'sha256'],
  ['quotations', 'pdf_sha256'],
  ['survey_imports', 'zip_sha256'],
  ['clearance_files', 'sha256'],
  ['clearance_files', 'thumb_hash'],
  ['clearance_files', 'screen_hash'],
  ['firm_exports', 'sha256'],
] as const;

/** Columns with a hash of something else, and what of. */
export const otherHashes: Record<string, string> = {
  'people.password_hash': 'a password',
  'sessions.token_hash': 'a token',
  'one_time_links.token_hash': 'a token',
  'recovery_codes.hash': 'a code',
  'api_keys.token_hash': 'a key',
  'share_links.token_hash': 'a token',
  'share_links.passcode_hash': 'a passcode',
  'share_viewings.token_hash': 'a token',
  'calendar_feeds.token_hash': 'a token',
  'quotations.text_sha256': 'the text that was accepted',
  'photos.dhash': 'what a picture looks like',
  'photo_uploads.sha256': 'a file that is still arriving',
  'event_links.details_hash': 'the record itself',
  'event_links.previous_hash': 'the record itself',
  'event_links.hash': 'the record itself',
  'event_heads.previous_hash': 'the record itself',
  'event_heads.hash': 'the record itself',
};
