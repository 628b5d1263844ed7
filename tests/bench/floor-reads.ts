import { asWritten } from '@garboard/core/catalogue/read-typed';
import type { Pool } from 'pg';

// What one would write by hand for these pages alone, knowing who asks: no policy, no other filter, no other order.

const image = (id: string, size: string, hash: string) => `/v1/photos/${id}/image?size=${size}&v=${hash}`;

interface FindingOfSurvey {
  id: string;
  due_on: string | null;
  items: unknown[];
  state: string;
  clearing: boolean;
  created_at: Date;
  updated_at: Date;
  latest_id: string | null;
  latest_state: string;
  sent_at: Date;
  decided_at: Date | null;
  [column: string]: unknown;
}
interface PhotoOfFinding {
  finding_id: string;
  id: string;
  caption: string;
  width: number;
  height: number;
  taken_at: Date | null;
  thumb_hash: string;
  screen_hash: string;
}

/** The first 50 findings of a survey with their photos and the latest evidence, as its firm reads them. */
export async function findingsOfSurvey(pool: Pool, survey: string) {
  const [findings, photos] = await Promise.all([
    pool.query<FindingOfSurvey>({
      name: 'findings',
      text: `SELECT f.id, f.survey_id, f.number, f.state, f.system, f.title, f.observed, f.consequence, f.recommendation,
                    f.urgency, f.within_days, f.due_on::text, f.items, f.issued_revision, f.clearing, f.harms,
                    f."references", f.catalogue_key, f.catalogue_version, f.position, f.created_at, f.updated_at, f.version,
                    c.id AS latest_id, c.state AS latest_state, c.sent_at, c.decided_at
               FROM findings f
               LEFT JOIN LATERAL (SELECT c.id, c.state, c.sent_at, c.decided_at FROM clearances c
                                   WHERE c.finding_id = f.id ORDER BY c.id DESC LIMIT 1) AS c ON true
              WHERE f.survey_id = $1 ORDER BY f.number LIMIT 51`,
      values: [survey],
    }),
    pool.query<PhotoOfFinding>({
      name: 'photos',
      text: `SELECT fp.finding_id, p.id, p.caption, p.width, p.height, p.taken_at, p.thumb_hash, p.screen_hash
               FROM (SELECT id FROM findings WHERE survey_id = $1 ORDER BY number LIMIT 51) AS f
               JOIN finding_photos fp ON fp.finding_id = f.id
               JOIN photos p ON p.id = fp.photo_id
              ORDER BY fp.finding_id, fp.ordinal`,
      values: [survey],
    }),
  ]);
  const shown = new Map<string, unknown[]>();
  for (const p of photos.rows) {
    const photo = {
      ...{ id: p.id, caption: p.caption, width: p.width, height: p.height },
      takenAt: p.taken_at?.toISOString() ?? null,
      images: { thumb: image(p.id, 'thumb', p.thumb_hash), screen: image(p.id, 'screen', p.screen_hash) },
    };
    const others = shown.get(p.finding_id);
    if (others) others.push(photo);
    else shown.set(p.finding_id, [photo]);
  }
  const items = findings.rows.slice(0, 50).map((f) => ({
    ...f,
    surveyId: f.survey_id,
    withinDays: f.within_days,
    dueOn: f.due_on,
    dueOnSet: null,
    overdue: false,
    itemsLeft: f.items.length,
    limit: null,
    revision: f.issued_revision,
    requiresClearing: f.clearing,
    photoIds: (shown.get(f.id) ?? []).map((photo) => (photo as { id: string }).id),
    photos: shown.get(f.id) ?? [],
    latestClearance: f.latest_id && {
      ...{ id: f.latest_id, state: f.latest_state, sentAt: f.sent_at.toISOString() },
      decidedAt: f.decided_at?.toISOString() ?? null,
    },
    worksheets: [],
    catalogueKey: f.catalogue_key,
    catalogueVersion: f.catalogue_version,
    cost: null,
    grading: null,
    withdrawal: null,
    may: {
      ...{ edit: true, sendEvidence: false, decide: false, withdraw: true, extend: true, reInspect: true },
      comment: true,
    },
    createdAt: f.created_at.toISOString(),
    updatedAt: f.updated_at.toISOString(),
  }));
  return { items, next: null };
}

const undecided = (of: string) => `${of}.clearing AND ${of}.state IN ('open', 'evidence-sent', 'returned')`;
const due = (of: string) => `coalesce(${of}.due_on, '9999-12-31'::date)`;

interface Recommended {
  due_key: string;
  id: string;
  state: string;
  clearance_id: string | null;
  sent_at: Date | null;
  [column: string]: unknown;
}

/** 50 undecided recommendations released to a person, soonest due first, from a place in that order on. */
export async function recommendationsOf(pool: Pool, person: string, from: { due: string; id: string }) {
  const { rows } = await pool.query<Recommended>({
    name: 'recommendations',
    text: `SELECT f.id, f.due_key::text, f.number, f.issued_title AS title, f.issued_system AS system,
                  f.issued_urgency AS urgency, f.state, f.due_on::text AS "dueOn", f.due_on < current_date AS overdue,
                  c.id AS clearance_id, c.sent_at, c.sent_by_name, f.survey_id AS "surveyId", s.number AS "surveyNumber",
                  v.id AS "vesselId", v.name AS "vesselName", firms.id AS "firmId", firms.name AS "firmName"
             FROM (SELECT f.*, ${due('f')} AS due_key FROM findings f
                    WHERE ${undecided('f')} AND (${due('f')}, f.id) > ($2::date, $3::uuid)
                      AND coalesce((SELECT true FROM parties p WHERE p.survey_id = f.survey_id AND p.person_id = $1
                                     AND p.released AND NOT p.held AND p.role <> 'yard' LIMIT 1), false)
                    ORDER BY ${due('f')}, f.id LIMIT 51) AS f
             JOIN surveys s ON s.id = f.survey_id
             JOIN vessels v ON v.id = s.vessel_id
             JOIN firms ON firms.id = f.firm_id
             LEFT JOIN clearances c ON c.finding_id = f.id AND c.state = 'sent'
            ORDER BY f.due_key, f.id`,
    values: [person, from.due || '0001-01-01', from.id || '00000000-0000-0000-0000-000000000000'],
  });
  const items = rows.slice(0, 50).map((r) => ({
    ...r,
    waitingFor: r.state === 'evidence-sent' ? 'insurer' : 'owner',
    evidence: r.clearance_id && {
      clearanceId: r.clearance_id,
      sentAt: r.sent_at?.toISOString(),
      sentBy: r.sent_by_name,
    },
    mayDecide: r.clearance_id !== null,
  }));
  const last = rows[49];
  const next =
    last && rows.length > 50 ? Buffer.from(`${last.due_key}_${last.id}`).toString('base64url') : null;
  return { items, next, total: null };
}

interface JobRow {
  id: string;
  stage: string;
  next_on: string | null;
  passed: boolean;
  recommends: boolean;
  undecided: number;
  sent: number;
  issued_at: Date | null;
  updated_at: Date;
  [column: string]: unknown;
}

/** 50 jobs of a firm that are not closed, soonest next day first. */
export async function jobsOfFirm(pool: Pool, firm: string) {
  const { rows } = await pool.query<JobRow>({
    name: 'jobs',
    text: `WITH visits AS (
             SELECT s.id, coalesce(min(a.date) FILTER (WHERE a.date >= current_date), max(a.date)) AS next_on
               FROM surveys s JOIN attendances a ON a.survey_id = s.id
              WHERE s.firm_id = $1 AND s.state IN ('enquiry', 'booked') GROUP BY s.id),
           clearances_due AS (
             SELECT f.survey_id AS id, f.due_on AS next_on
               FROM (SELECT f.id, f.survey_id, f.due_on FROM findings f
                      WHERE f.firm_id = $1 AND ${undecided('f')} AND f.due_on IS NOT NULL
                      ORDER BY f.due_on, f.survey_id OFFSET 0) AS f
              WHERE coalesce((SELECT s.state = 'issued' FROM surveys s WHERE s.id = f.survey_id), false)
                AND coalesce((SELECT false FROM findings g WHERE g.survey_id = f.survey_id AND ${undecided('g')}
                                 AND (g.due_on, g.id) < (f.due_on, f.id) LIMIT 1), true)
              ORDER BY f.due_on, f.survey_id LIMIT 51),
           j AS (SELECT id, next_on FROM (SELECT *, false AS recommends FROM visits UNION ALL
                                          SELECT *, true FROM clearances_due) AS either
                  ORDER BY next_on, id LIMIT 51)
           SELECT s.id, s.firm_id AS "firmId", firms.name AS "firmName", s.number, s.vessel_id AS "vesselId",
                  v.name AS "vesselName", s.purpose, s.requested_by AS "requestedBy", s.surveyor_id AS "surveyorId",
                  people.name AS "surveyorName", s.issued_at, s.updated_at, j.next_on::text,
                  j.next_on < current_date AS passed, u.undecided > 0 AS recommends, u.undecided, u.sent, u.overdue,
                  CASE WHEN u.undecided > 0 THEN 'in-clearance' ELSE s.state END AS stage
             FROM j
             JOIN surveys s ON s.id = j.id
             JOIN vessels v ON v.id = s.vessel_id
             JOIN firms ON firms.id = s.firm_id
             LEFT JOIN people ON people.id = s.surveyor_id
             LEFT JOIN LATERAL (
               SELECT count(*)::int AS undecided, (count(*) FILTER (WHERE f.state = 'evidence-sent'))::int AS sent,
                      (count(*) FILTER (WHERE f.due_on < current_date))::int AS overdue
                 FROM findings f WHERE f.survey_id = s.id AND ${undecided('f')}) AS u ON true
            ORDER BY j.next_on, j.id`,
    values: [firm],
  });
  const items = rows.slice(0, 50).map((r) => ({
    ...r,
    next: r.next_on && {
      what: r.recommends ? 'recommendation' : 'attendance',
      on: r.next_on,
      passed: r.passed,
    },
    waiting: [
      { for: 'owner', name: null, count: r.undecided - r.sent },
      { for: 'insurer', name: null, count: r.sent },
    ].filter(({ count }) => count > 0),
    issuedAt: r.issued_at?.toISOString() ?? null,
    updatedAt: r.updated_at.toISOString(),
  }));
  const last = rows[49];
  const next =
    last && rows.length > 50 ? Buffer.from(`${last.next_on}_${last.id}`).toString('base64url') : null;
  return { items, next, total: null };
}

/** The words of the search that is measured, and what is asked of PostgreSQL for them. */
export const sought = 'fuel hose';
const fit = ['q', 'x'].map((words) => `ts_rank('{0.05, 0.2, 0.4, 1}', e.search, ${words})`).join(' + ');
const { tsquery, exact } = asWritten(sought) ?? { tsquery: '', exact: '' };

/** The first 50 known defects that fit the words, as a firm reads them. */
export async function searchInCatalogue(pool: Pool, firm: string) {
  const { rows } = await pool.query<{ diagram: string | null; [column: string]: unknown }>({
    name: 'catalogue',
    text: `SELECT * FROM (
             SELECT e.key, e.system, e.title, e.urgency, e.harms, 'firm' AS origin, NULL AS diagram,
                    ${fit} AS rank
               FROM firm_catalogue_entries e, to_tsquery('garboard_english', $2) AS q, to_tsquery('garboard_english', $3) AS x
              WHERE e.firm_id = $1 AND e.current AND e.search @@ q
              UNION ALL
             SELECT e.key, e.system, e.title, e.urgency, e.harms, 'garboard', e.diagram,
                    ${fit}
               FROM catalogue_entries e, to_tsquery('garboard_english', $2) AS q, to_tsquery('garboard_english', $3) AS x
              WHERE e.search @@ q AND e.key NOT IN (SELECT key FROM firm_catalogue_entries
                                                     WHERE firm_id = $1 AND current)) AS shown
            ORDER BY rank DESC, key LIMIT 51`,
    values: [firm, tsquery, exact],
  });
  const items = rows.slice(0, 50).map(({ diagram, ...row }) => ({ ...row, hasDiagram: diagram !== null }));
  return { items, next: null };
}
