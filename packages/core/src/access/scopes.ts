import { Prisma } from '@garboard/db/database';
import { type Actor, sightOf, staffFirmIds } from './actor.ts';

// "May see", one where-builder a noun. What these leave out does not exist for the caller.

const nobody = '00000000-0000-0000-0000-000000000000';

/** The actor's own rows among a survey's parties; by an API key those in its firm and role. Nobody's for Garboard. */
export function ownParties(actor: Actor): Prisma.PartyWhereInput {
  if (actor.kind === 'system') return { personId: nobody };
  const { personId, key } = actor;
  return { personId, ...(key ? { firmId: key.firmId, role: key.role } : {}) };
}

/** The same for hand-written SQL: rows of `parties p`. */
export function ownPartiesSql(actor: Actor): Prisma.Sql {
  if (actor.kind === 'system') return Prisma.sql`false`;
  const own = Prisma.sql`p.person_id = ${actor.personId}::uuid`;
  const { key } = actor;
  return key ? Prisma.sql`${own} AND p.firm_id = ${key.firmId}::uuid AND p.role = ${key.role}` : own;
}

/** Own rows to which what was issued is shown: released, and not withheld. */
const released = (actor: Actor) => ({ ...ownParties(actor), released: true, held: false });

/** Surveys of the actor's own firms, and surveys to which the actor is a party. */
export function visibleSurveys(actor: Actor): Prisma.SurveyWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  return actor.kind === 'person' ? { OR: [own, { parties: { some: ownParties(actor) } }] } : own;
}

/** Surveys whose issued contents the actor may see: the firm's own, or released to the actor. */
export function releasedSurveys(actor: Actor): Prisma.SurveyWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  return actor.kind === 'person' ? { OR: [own, { parties: { some: released(actor) } }] } : own;
}

/** Vessels of the actor's own firms, and those of surveys to which the actor is a party. */
export function visibleVessels(actor: Actor): Prisma.VesselWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  if (actor.kind === 'system') return own;
  return { OR: [own, { surveys: { some: { parties: { some: ownParties(actor) } } } }] };
}

/** All findings of the actor's own firms; of others what was issued and released, to a yard those it puts right. */
export function visibleFindings(actor: Actor): Prisma.FindingWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  if (actor.kind === 'system') return own;
  const survey = { parties: { some: { AND: [released(actor), { role: { not: 'yard' } }] } } };
  const yards = { some: { party: released(actor) } };
  return { OR: [own, { state: { not: 'draft' }, OR: [{ survey }, { yards }] }] };
}

// The same for hand-written SQL. Whoever is party to no other firm's surveys sees by their firms alone.

const ownFirmsSql = (actor: Actor, firmId: Prisma.Sql) =>
  Prisma.sql`${firmId} = ANY (${staffFirmIds(actor)}::uuid[])`;

/** `visibleSurveys` of rows `surveys s`. */
export function visibleSurveysSql(actor: Actor): Prisma.Sql {
  const own = ownFirmsSql(actor, Prisma.sql`s.firm_id`);
  if (!sightOf(actor).asParty) return own;
  return Prisma.sql`(${own} OR EXISTS (SELECT FROM parties p WHERE p.survey_id = s.id AND ${ownPartiesSql(actor)}))`;
}

/** `visibleFindings` of rows `findings f`. */
export function visibleFindingsSql(actor: Actor): Prisma.Sql {
  const own = ownFirmsSql(actor, Prisma.sql`f.firm_id`);
  if (!sightOf(actor).asParty) return own;
  const sees = Prisma.sql`${ownPartiesSql(actor)} AND p.released AND NOT p.held`;
  return Prisma.sql`(${own} OR f.state <> 'draft' AND (
    EXISTS (SELECT FROM parties p WHERE p.survey_id = f.survey_id AND p.role <> 'yard' AND ${sees})
    OR EXISTS (SELECT FROM finding_yards y JOIN parties p ON p.id = y.party_id WHERE y.finding_id = f.id AND ${sees})))`;
}
