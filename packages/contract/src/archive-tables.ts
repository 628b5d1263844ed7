export interface ArchiveTable {
  name: string;
  key: readonly string[];
  columns: string;
}

/**
 * What of a firm goes into its archive, in the order in which it can be brought in: each table's key, by which its rows
 * are sorted, and its columns with their kinds (`?`: may be null). A test compares this with the database, so that a new
 * table or column is put here or among the exceptions of core/archive/left-out.ts, each with a reason.
 *
 * Kinds are those of PostgreSQL's own JSON: `instant` is ISO 8601 in UTC, `date` a calendar day, `bytes` hexadecimal
 * digits after `\x`, `json` any value.
 */
export const archiveTables = [
  {
    name: 'firms',
    key: ['id'],
    columns: `id uuid, name text, address_lines text[]?, email text?, phone text?, layup_requires_clearing bool, version int,
      created_at instant, measures text, paper text, review_required bool, before_use_days int, layup_day text?,
      layup_days int?`,
  },
  {
    name: 'people',
    key: ['id'],
    columns: `id uuid, email text, name text, created_at instant, joined_at instant?, language text, time_zone text?`,
  },
  {
    name: 'firm_members',
    key: ['id'],
    columns: `id uuid, firm_id uuid, person_id uuid, role text, qualifications text, created_at instant`,
  },
  {
    name: 'firm_rates',
    key: ['firm_id'],
    columns: `firm_id uuid, currency text, per_length int, length_unit text, per_hour int, per_distance int,
      distance_unit text, minimum int, tax_name text, tax_rate int, quotation_days int, payment_days int,
      release_rule text, payment_words text, version int, updated_at instant`,
  },
  {
    name: 'firm_terms',
    key: ['id'],
    columns: `id uuid, firm_id uuid, version int, text text, saved_at instant, saved_by_id uuid?, saved_by text`,
  },
  {
    name: 'firm_catalogue_entries',
    key: ['id'],
    columns: `id uuid, firm_id uuid, key text, system text, title text, look_for text, observed text, consequence text,
      recommendation text, urgency text, within_days int?, raise text?, lower text?, harms text[]?,
      references text[]?, worksheets text[]?, cautions text[]?, related text[]?, also_called text[]?, version int,
      current bool, saved_at instant, saved_by_id uuid?, saved_by text, retired_at instant?, retired_by text?`,
  },
  {
    name: 'vessels',
    key: ['id'],
    columns: `id uuid, firm_id uuid, name text, hull_number text?, official_number text?, builder text?, model text?,
      year_built int?, hull_material text?, propulsion text?, length_overall_m float?, beam_m float?, draft_m float?,
      displacement_kg float?, home_port text?, flag text?, version int, created_at instant, updated_at instant`,
  },
  {
    name: 'survey_counters',
    key: ['firm_id', 'year'],
    columns: `firm_id uuid, year int, last int`,
  },
  {
    name: 'invoice_counters',
    key: ['firm_id', 'year'],
    columns: `firm_id uuid, year int, last int`,
  },
  {
    name: 'surveys',
    key: ['id'],
    columns: `id uuid, firm_id uuid, vessel_id uuid, number text, purpose text, state text, requested_by text, scope text,
      limitations text, time_zone text, clearance_decided_by text, surveyor_id uuid?, lead_photo_id uuid?,
      finding_count int, photo_count int, issued_at instant?, version int, created_at instant, updated_at instant,
      print_costs bool, present text[]?, held bool`,
  },
  {
    name: 'survey_releases',
    key: ['survey_id'],
    columns: `survey_id uuid, firm_id uuid, rule text, word_at instant?, word_by text?, reason text`,
  },
  {
    name: 'attendances',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, ordinal int, date date, place text, condition text`,
  },
  {
    name: 'coverage_answers',
    key: ['survey_id', 'system'],
    columns: `firm_id uuid, survey_id uuid, system text, reached text?, reason text, looked_from text, version int,
      updated_at instant`,
  },
  {
    name: 'inventory_items',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, system text, name text, maker text?, serial_number text?, place text?,
      count int, made_on date?, expires_on date?, note text, version int, created_at instant, updated_at instant`,
  },
  {
    name: 'parties',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, person_id uuid, role text, name text, released bool, created_at instant,
      client bool, held bool`,
  },
  {
    name: 'photos',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, sha256 text, bytes int, media_type text, file_name text, width int,
      height int, taken_at instant?, order_key text, caption text, marks json, quarter_turns int, state text,
      thumb_hash text?, screen_hash text?, print_hash text?, uploaded_by_id uuid?, version int, created_at instant,
      before_photo_id uuid?, dhash text?, problem text?`,
  },
  {
    name: 'photo_prints',
    key: ['photo_id', 'edge'],
    columns: `firm_id uuid, photo_id uuid, edge int, sha256 text`,
  },
  {
    name: 'findings',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, number int, system text, title text, observed text, consequence text,
      recommendation text, urgency text, within_days int?, harms text[]?, references text[]?, catalogue_key text?,
      position json?, state text, due_on date?, issued json?, clearing bool, version int, created_at instant,
      updated_at instant, catalogue_version int?, cost_basis text?, cost_currency text?, cost_high int?,
      cost_low int?, cost_note text, grading_probability text?, grading_severity int?, withdrawn_at instant?,
      withdrawn_by text?, withdrawn_reason text?, accepted_limit text?, accepted_until date?,
      due_extended_at instant?, due_on_set date?, issued_revision int?, item_states json, items json,
      issued_system text?, issued_title text?, issued_urgency text?`,
  },
  {
    name: 'imported_rows',
    key: ['survey_id', 'fingerprint'],
    columns: `firm_id uuid, survey_id uuid, fingerprint text, finding_id uuid`,
  },
  {
    name: 'finding_photos',
    key: ['finding_id', 'photo_id'],
    columns: `firm_id uuid, finding_id uuid, photo_id uuid, ordinal int`,
  },
  {
    name: 'finding_yards',
    key: ['finding_id', 'party_id'],
    columns: `firm_id uuid, survey_id uuid, finding_id uuid, party_id uuid, person_id uuid`,
  },
  {
    name: 'deleted_findings',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, number int, title text, system text, urgency text, record json,
      deleted_at instant, deleted_by text`,
  },
  {
    name: 'worksheets',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, finding_id uuid?, kind text, kind_version int, title text, inputs json,
      result json, verdict text, printed bool, issued json?, version int, created_at instant, updated_at instant`,
  },
  {
    name: 'reports',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, kind text, revision int?, state text, progress int, stage text,
      problem text?, snapshot json, sha256 text?, pages int?, bytes int?, requested_by_id uuid?, requested_by text,
      created_at instant, issued_at instant?, renderer text?, signed_by text?, verification_code text?,
      changes json?, finding_id uuid?`,
  },
  {
    name: 'report_photos',
    key: ['report_id', 'photo_id'],
    columns: `firm_id uuid, report_id uuid, photo_id uuid, height int?, print_hash text?, screen_hash text?,
      thumb_hash text?, width int?`,
  },
  {
    name: 're_inspections',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, date date, place text, condition text, note text, by_id uuid?,
      by_name text, by_role text, at instant`,
  },
  {
    name: 're_inspection_items',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, re_inspection_id uuid, finding_id uuid, ordinal int, item_ids uuid[]?,
      outcome text, note text, limit_text text?, limit_until date?, photo_ids uuid[]?, clearance_id uuid?,
      state_after text`,
  },
  {
    name: 'clearances',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, finding_id uuid, state text, statement text, work_done_by text,
      work_done_on date, sent_by_id uuid?, sent_by_name text, sent_by_role text, sent_at instant, decision text?,
      reason text?, decided_by_id uuid?, decided_by_name text?, decided_by_role text?, decided_at instant?,
      items json, limit_text text?, limit_until date?, re_inspection_id uuid?, revision int?, worksheet json?,
      worksheet_inputs json?`,
  },
  {
    name: 'clearance_files',
    key: ['id'],
    columns: `id uuid, firm_id uuid, clearance_id uuid, ordinal int, sha256 text, bytes int, media_type text, file_name text,
      width int?, height int?, thumb_hash text?, screen_hash text?, before_photo_id uuid?`,
  },
  {
    name: 'due_extensions',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, finding_id uuid, from_on date?, due_on date, reason text, by_id uuid?,
      by_name text, by_role text, at instant`,
  },
  {
    name: 'finding_comments',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, finding_id uuid, text text, visible_to text[]?, by_id uuid?,
      by_name text, by_role text, at instant, removed_at instant?`,
  },
  {
    name: 'due_reminders',
    key: ['finding_id', 'due_on', 'days'],
    columns: `firm_id uuid, finding_id uuid, due_on date, days int`,
  },
  {
    name: 'overdue_rounds',
    key: ['survey_id', 'week'],
    columns: `firm_id uuid, survey_id uuid, week date`,
  },
  {
    name: 'reviews',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, state text, note text, asked_by_id uuid?, asked_by_name text,
      asked_at instant, reviewer_id uuid?, reviewer_name text?, decided_by_id uuid?, decided_by text?,
      decided_at instant?, reason text, record text?`,
  },
  {
    name: 'review_comments',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, finding_id uuid?, reply_to_id uuid?, text text, by_id uuid?,
      by_name text, by_role text, at instant, settled_at instant?, settled_by text?`,
  },
  {
    name: 'quotations',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, revision int, state text, party_id uuid?, addressee text, currency text,
      lines json, net int, tax int, total int, scope text, valid_until date, document json?, text text?,
      text_sha256 text?, sent_at instant?, decided_at instant?, decided_by_id uuid?, decided_by text?,
      decided_from text?, reason text, pdf_sha256 text?, pdf_bytes int?, version int, created_at instant`,
  },
  {
    name: 'invoices',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, quotation_id uuid?, number text?, state text, bill_to text,
      currency text, lines json, net int, tax int, total int, paid int, tax_name text, payment_words text,
      issued_on date?, due_on date?, reason text, version int, created_at instant`,
  },
  {
    name: 'invoice_payments',
    key: ['id'],
    columns: `id uuid, firm_id uuid, invoice_id uuid, amount int, paid_on date, note text, recorded_by text,
      created_at instant`,
  },
  {
    name: 'visits',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, state text, starts_at instant, ends_at instant, place text,
      condition text, note text, sequence int, version int, created_at instant, updated_at instant`,
  },
  {
    name: 'visit_asks',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid, visit_id uuid, party_id uuid, person_id uuid, name text, role text,
      answer text, note text, answered_at instant?`,
  },
  {
    name: 'notices',
    key: ['id'],
    columns: `id uuid, firm_id uuid, person_id uuid, event_id uuid, survey_id uuid?, finding_id uuid?, kind text, topic text,
      facts json, at instant, read_at instant?`,
  },
  {
    name: 'events',
    key: ['id'],
    columns: `id uuid, firm_id uuid, survey_id uuid?, finding_id uuid?, report_id uuid?, at instant, kind text,
      actor_id uuid?, actor_name text, actor_role text, data json, salt bytes?, erased_by uuid?`,
  },
  {
    name: 'event_links',
    key: ['firm_id', 'seq'],
    columns: `firm_id uuid, seq int, event_id uuid, details_hash bytes, previous_hash bytes, hash bytes`,
  },
  {
    name: 'former_ids',
    key: ['firm_id', 'former_id'],
    columns: `firm_id uuid, former_id uuid, person_id uuid`,
  },
  {
    name: 'event_heads',
    key: ['firm_id'],
    columns: `firm_id uuid, seq int, previous_hash bytes, hash bytes`,
  },
] as const satisfies readonly ArchiveTable[];
