import type { Finding } from '@garboard/contract/findings';
import { Prisma } from '@garboard/db/database';
import { atMost, together } from '@garboard/db/reading';
import { sightOf } from '../access/actor.ts';
import { isStaff, type Standing } from '../access/policy.ts';
import { ownPartiesSql, visibleFindingsSql, visibleSurveysSql } from '../access/scopes.ts';
import type { ReadCtx } from '../context.ts';
import { asIssued } from '../photos/issued-pictures.ts';
import { notFound } from '../problems.ts';
import { worksheetsOfFindings } from '../worksheets/worksheets-of-findings.ts';

/** A survey as far as its findings depend on it. */
export interface FindingSurvey extends Standing {
  state: string;
  timeZone: string;
  printCosts: boolean;
}

type Columns = Omit<Prisma.FindingGetPayload<object>, 'dueOn' | 'dueOnSet' | 'acceptedUntil'>;
/** A finding's row with its days as text; `issued` only for parties, the only ones to read it. */
export interface FindingRow extends Columns {
  dueOn: string | null;
  dueOnSet: string | null;
  acceptedUntil: string | null;
  /** Of its evidence sent last, where the actor may see that. */
  latestId: string | null;
  latestState: string | null;
  latestSentAt: Date | null;
  latestDecidedAt: Date | null;
}

/** A photo as findings show it. */
export interface ShownPhoto {
  id: string;
  caption: string;
  state: string;
  width: number;
  height: number;
  takenAt: Date | null;
  thumbHash: string | null;
  screenHash: string | null;
  printHash: string | null;
}

export interface ReadFindings {
  survey: FindingSurvey;
  /** Whether the actor works for the firm, and so reads the working copy. */
  staff: boolean;
  rows: FindingRow[];
  /** By finding, in their order: those of the working copy, for parties those it was issued with. */
  photos: Map<string, ShownPhoto[]>;
  worksheets: Map<string, Finding['worksheets']>;
}

const surveyColumns = (ctx: ReadCtx) => Prisma.sql`
  s.firm_id AS "firmId", s.state, s.time_zone AS "timeZone", s.print_costs AS "printCosts",
  s.clearance_decided_by AS "clearanceDecidedBy",
  (SELECT coalesce(json_agg(json_build_object('role', p.role, 'released', p.released, 'held', p.held,
                                              'client', p.client)), '[]')
     FROM parties p WHERE p.survey_id = s.id AND ${ownPartiesSql(ctx.actor)}) AS parties`;

const findingColumns = Prisma.sql`
  f.id, f.firm_id AS "firmId", f.survey_id AS "surveyId", f.number, f.system, f.title, f.observed, f.consequence,
  f.recommendation, f.urgency, f.within_days AS "withinDays", f.harms, f.references, f.catalogue_key AS "catalogueKey",
  f.catalogue_version AS "catalogueVersion", f.position, f.cost_low AS "costLow", f.cost_high AS "costHigh",
  f.cost_currency AS "costCurrency", f.cost_basis AS "costBasis", f.cost_note AS "costNote",
  f.grading_severity AS "gradingSeverity", f.grading_probability AS "gradingProbability", f.state,
  f.due_on::text AS "dueOn", f.due_on_set::text AS "dueOnSet", f.items, f.item_states AS "itemStates",
  f.accepted_limit AS "acceptedLimit", f.accepted_until::text AS "acceptedUntil",
  f.issued_revision AS "issuedRevision", f.withdrawn_reason AS "withdrawnReason", f.withdrawn_at AS "withdrawnAt",
  f.withdrawn_by AS "withdrawnBy", f.clearing, f.version, f.created_at AS "createdAt", f.updated_at AS "updatedAt"`;

/**
 * Findings of one survey in the order of the report, with all that presenting them takes, in a fixed number of
 * statements that travel together.
 *
 * @param of.survey the survey's id, as an expression; @param of.where which of its findings `f`;
 * @param of.noun what was asked for, unless it is the survey
 * @throws Refusal `not-found` when it isn't visible
 */
export async function readFindings(
  ctx: ReadCtx,
  of: { survey: Prisma.Sql; where: Prisma.Sql; limit: number; noun?: string },
): Promise<ReadFindings> {
  const surveyOf = async () => {
    const [survey] = await ctx.tx.$queryRaw<FindingSurvey[]>`
      SELECT ${surveyColumns(ctx)} FROM surveys s WHERE s.id = ${of.survey} AND ${visibleSurveysSql(ctx.actor)}`;
    if (!survey) throw notFound(of.noun ?? 'survey');
    return survey;
  };
  // Who is party to nothing sees what they see as staff.
  const first = sightOf(ctx.actor).asParty ? await surveyOf() : null;
  const staff = first === null || isStaff(ctx.actor, first);
  const page = Prisma.sql`
    FROM findings f WHERE f.survey_id = ${of.survey} AND ${visibleFindingsSql(ctx.actor)} AND ${of.where}
    ORDER BY f.number ${atMost(of.limit)}`;
  const [survey, rows, photos, worksheets] = await together(ctx.tx, [
    async () => first ?? (await surveyOf()),
    () => ctx.tx.$queryRaw<FindingRow[]>`
      SELECT f.*, c.id AS "latestId", c.state AS "latestState", c.sent_at AS "latestSentAt",
             c.decided_at AS "latestDecidedAt"
        FROM (SELECT ${findingColumns}, ${staff ? Prisma.sql`NULL::jsonb` : Prisma.sql`f.issued`} AS issued ${page}) AS f
        LEFT JOIN LATERAL (
          SELECT c.id, c.state, c.sent_at, c.decided_at
            FROM clearances c WHERE c.finding_id = f.id ORDER BY c.id DESC LIMIT 1) AS c ON true
       ORDER BY f.number`,
    () => ctx.tx.$queryRaw<PhotoOf[]>`
      SELECT f.id AS of, p.id, p.caption, p.state, p.width, p.height, p.taken_at AS "takenAt",
             p.thumb_hash AS "thumbHash", p.screen_hash AS "screenHash", p.print_hash AS "printHash"
        FROM (SELECT f.id, f.issued ${page}) AS f
       CROSS JOIN LATERAL (${staff ? workingPhotos : issuedPhotos}) AS shown
        JOIN photos p ON p.id = shown.id
       ORDER BY f.id, shown.at`,
    () => worksheetsOfFindings(ctx, { survey: of.survey, staff }),
  ]);
  return { survey, staff, rows, photos: byFinding(staff ? photos : await asIssued(ctx, photos)), worksheets };
}

const workingPhotos = Prisma.sql`
  SELECT fp.photo_id AS id, fp.ordinal AS at FROM finding_photos fp WHERE fp.finding_id = f.id`;
/** Those it was issued with; before anything was issued, those of the working copy. */
const issuedPhotos = Prisma.sql`
  SELECT (named.photo->>'id')::uuid AS id, named.at
    FROM jsonb_array_elements(f.issued->'photos') WITH ORDINALITY AS named (photo, at)
   UNION ALL
  SELECT fp.photo_id, fp.ordinal FROM finding_photos fp WHERE fp.finding_id = f.id AND f.issued IS NULL`;

type PhotoOf = ShownPhoto & { of: string };

function byFinding(photos: readonly PhotoOf[]): Map<string, ShownPhoto[]> {
  const found = new Map<string, ShownPhoto[]>();
  for (const photo of photos) {
    const others = found.get(photo.of);
    if (others) others.push(photo);
    else found.set(photo.of, [photo]);
  }
  return found;
}
