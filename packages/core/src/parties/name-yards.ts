import type { findingYards } from '@garboard/contract/surveys';
import type { Role } from '@garboard/trade/permissions';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import { visibleFindings } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { recordEvents } from '../events/record-event.ts';
import { loadFinding } from '../findings/load-finding.ts';
import { invalidField, notFound } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { getParty, type PartyView } from './list-parties.ts';

type Yards = z.output<typeof findingYards>;
interface Yard {
  id: string;
  firmId: string;
  surveyId: string;
  personId: string;
}

const detail = 'The firm, who pays and the owner say which yard puts a finding right.';

/**
 * Says which yards put a finding right; a yard sees these findings and no others. For the firm, who pays, and an owner
 * to whom the report is released.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input` for a party that is no yard of this survey
 */
export async function nameYards(ctx: Ctx, input: { findingId: string } & Yards): Promise<Yards> {
  const { id, surveyId, survey } = await loadFinding(ctx, input.findingId);
  const role = authorise(ctx.actor, survey, 'finding.assign-yard', detail);
  const wanted = [...new Set(input.partyIds)];
  const yards = await ctx.tx.party.findMany({
    where: {
      surveyId,
      role: 'yard',
      OR: [{ id: { in: wanted } }, { findings: { some: { findingId: id } } }],
    },
    orderBy: { id: 'asc' },
  });
  const known = new Set(yards.map((yard) => yard.id));
  const unknown = wanted.findIndex((partyId) => !known.has(partyId));
  if (unknown >= 0) {
    throw invalidField(`/partyIds/${unknown}`, 'This is no yard of this survey; invite it first.');
  }
  let changed = 0;
  for (const yard of yards) {
    changed += wanted.includes(yard.id) ? await give(ctx, yard, [id]) : await take(ctx, yard, [id]);
  }
  if (changed > 0) await recordYards(ctx, role, survey, [id]);
  return { partyIds: wanted };
}

/**
 * Says which findings a yard puts right, of those that the actor sees.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input` for no finding of this survey
 */
export async function nameFindings(
  ctx: Ctx,
  input: { surveyId: string; partyId: string; findingIds: readonly string[] },
): Promise<PartyView> {
  const survey = await loadSurvey(ctx, input.surveyId);
  const role = authorise(ctx.actor, survey, 'finding.assign-yard', detail);
  const yard = await ctx.tx.party.findFirst({
    where: { id: input.partyId, surveyId: survey.id, role: 'yard' },
    include: { findings: true },
  });
  if (!yard) throw notFound('yard');
  const wanted = await findingsOf(ctx, survey.id, input.findingIds);
  const had = yard.findings.map((row) => row.findingId);
  const added = wanted.filter((id) => !had.includes(id));
  const dropped = had.filter((id) => !wanted.includes(id));
  await give(ctx, yard, added);
  await take(ctx, yard, dropped);
  await recordYards(ctx, role, survey, [...added, ...dropped]);
  return getParty(ctx, survey.id, yard.id);
}

/** Gives a yard that is being invited its findings. @throws Refusal `invalid-input` for one the actor doesn't see */
export async function giveFindings(ctx: Ctx, yard: Yard, findingIds: readonly string[]): Promise<void> {
  await give(ctx, yard, await findingsOf(ctx, yard.surveyId, findingIds));
}

/** These ids, each once, when all are findings of the survey that the actor sees. */
async function findingsOf(ctx: Ctx, surveyId: string, findingIds: readonly string[]): Promise<string[]> {
  const wanted = [...new Set(findingIds)];
  const found = await ctx.tx.finding.findMany({
    where: { AND: [{ id: { in: wanted }, surveyId }, visibleFindings(ctx.actor)] },
    select: { id: true },
  });
  const known = new Set(found.map((finding) => finding.id));
  const unknown = wanted.findIndex((findingId) => !known.has(findingId));
  if (unknown >= 0) throw invalidField(`/findingIds/${unknown}`, 'This is no finding of this survey.');
  return wanted;
}

async function give(ctx: Ctx, yard: Yard, findingIds: readonly string[]): Promise<number> {
  const { id: partyId, firmId, surveyId, personId } = yard;
  const data = findingIds.map((findingId) => ({ firmId, surveyId, findingId, partyId, personId }));
  return (await ctx.tx.findingYard.createMany({ data, skipDuplicates: true })).count;
}

async function take(ctx: Ctx, yard: Yard, findingIds: readonly string[]): Promise<number> {
  const where = { partyId: yard.id, findingId: { in: [...findingIds] } };
  return (await ctx.tx.findingYard.deleteMany({ where })).count;
}

/** Writes into each finding's history which yards put it right from now on. */
async function recordYards(
  ctx: Ctx,
  role: Role,
  { id: surveyId, firmId }: { id: string; firmId: string },
  findingIds: readonly string[],
): Promise<void> {
  if (findingIds.length === 0) return;
  const rows = await ctx.tx.findingYard.findMany({
    where: { findingId: { in: [...findingIds] } },
    include: { party: { select: { name: true } } },
    orderBy: { partyId: 'asc' },
  });
  await recordEvents(
    ctx,
    findingIds.map((findingId) => {
      const names = rows.filter((row) => row.findingId === findingId).map((row) => row.party.name);
      const kind = 'finding.yards-named' as const;
      return { firmId, surveyId, findingId, kind, role, data: { names: names.join(', ') } };
    }),
  );
}
