import type { RecommendationFilter, recommendationSorts } from '@garboard/contract/recommendations';
import { Prisma } from '@garboard/db/database';
import { urgencies } from '@garboard/trade/vocabulary';
import { likeOf, undecided } from './sight.ts';

type Sort = (typeof recommendationSorts)[number];

/** An order of the list: what is compared, of which type, and what a cursor of it looks like (`key_id`). */
interface Order {
  key: Prisma.Sql;
  type: Prisma.Sql;
  cursor: RegExp;
}

const uuid = '[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}';
const cursorOf = (key: string) => new RegExp(`^${key}_${uuid}$`, 'u');

/** Findings without a due date come after all that have one. */
const due = Prisma.sql`coalesce(f.due_on, '9999-12-31'::date)`;

export const recommendationOrder: Record<Sort, Order> = {
  due: { key: due, type: Prisma.sql`date`, cursor: cursorOf('\\d{4}-[01]\\d-[0-3]\\d') },
  urgency: {
    key: Prisma.sql`array_position(${[...urgencies]}::text[], f.issued_urgency) * 10000000 + (${due} - '2000-01-01'::date)`,
    type: Prisma.sql`int`,
    cursor: cursorOf('\\d{1,9}'),
  },
  vessel: {
    key: Prisma.sql`lower(v.name) || ' ' || m.number || ' ' || to_char(f.number, 'FM0000')`,
    type: Prisma.sql`text`,
    cursor: cursorOf('[^\\p{Cc}]{1,300}'),
  },
  sent: {
    key: Prisma.sql`coalesce(extract(epoch FROM c.sent_at)::numeric(14, 3), 99999999999)`,
    type: Prisma.sql`numeric`,
    cursor: cursorOf('\\d{1,12}(?:\\.\\d{1,3})?'),
  },
};

const dueTerms = {
  overdue: Prisma.sql`f.due_on < m.today`,
  'this-week': Prisma.sql`f.due_on BETWEEN m.today AND m.today + 7`,
  later: Prisma.sql`f.due_on > m.today + 7`,
  none: Prisma.sql`f.due_on IS NULL`,
};

const waitTerms = {
  owner: Prisma.sql`f.state IN ('open', 'returned')`,
  insurer: Prisma.sql`f.state = 'evidence-sent' AND m.decider = 'insurer'`,
  surveyor: Prisma.sql`f.state = 'evidence-sent' AND m.decider = 'surveyor'`,
  me: Prisma.sql`f.state = 'evidence-sent' AND m.decides`,
};

/** What narrows the list, as ` AND …`, or nothing; about findings `f`, surveys `m` and, with `q`, vessels `v`. */
export function recommendationConditions(filter: RecommendationFilter): Prisma.Sql {
  const like = filter.q ? likeOf(filter.q) : null;
  const given = [
    filter.state ? Prisma.sql`f.state = ${filter.state}` : null,
    filter.decided === 'no' || filter.due || filter.waitingFor ? undecided : null,
    filter.decided === 'yes' ? Prisma.sql`NOT (${undecided})` : null,
    filter.due ? dueTerms[filter.due] : null,
    filter.dueFrom ? Prisma.sql`f.due_on >= ${filter.dueFrom}::date` : null,
    filter.dueBefore ? Prisma.sql`f.due_on < ${filter.dueBefore}::date` : null,
    filter.urgency ? Prisma.sql`f.issued_urgency = ${filter.urgency}` : null,
    filter.system ? Prisma.sql`f.issued_system = ${filter.system}` : null,
    filter.firmId ? Prisma.sql`m.firm_id = ${filter.firmId}::uuid` : null,
    filter.vesselId ? Prisma.sql`m.vessel_id = ${filter.vesselId}::uuid` : null,
    filter.surveyId ? Prisma.sql`m.id = ${filter.surveyId}::uuid` : null,
    filter.waitingFor ? waitTerms[filter.waitingFor] : null,
    like
      ? Prisma.sql`(f.issued_title ILIKE ${like} OR v.name ILIKE ${like} OR m.number ILIKE ${like})`
      : null,
  ].filter((term) => term !== null);
  return given.length > 0 ? Prisma.sql`AND ${Prisma.join(given, ' AND ')}` : Prisma.empty;
}
