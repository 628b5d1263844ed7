import type { findingYards } from '@garboard/contract/surveys';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import { visibleFindings } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { loadFinding } from '../findings/load-finding.ts';
import { invalidField } from '../problems.ts';

type Yards = z.output<typeof findingYards>;

/**
 * Says which yards put a finding right; a yard sees these findings and no others. For the firm, who pays, and an owner
 * to whom the report is released.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input` for a party that is no yard of this survey
 */
export async function nameYards(ctx: Ctx, input: { findingId: string } & Yards): Promise<Yards> {
  const { id, surveyId, firmId, survey } = await loadFinding(ctx, input.findingId);
  const detail = 'The firm, who pays and the owner say which yard puts a finding right.';
  const role = authorise(ctx.actor, survey, 'finding.assign-yard', detail);
  const wanted = [...new Set(input.partyIds)];
  const yards = await ctx.tx.party.findMany({
    where: {
      surveyId,
      role: 'yard',
      OR: [{ id: { in: wanted } }, { findings: { some: { findingId: id } } }],
    },
    include: { findings: { where: { findingId: id } } },
    orderBy: { id: 'asc' },
  });
  const known = new Set(yards.map((yard) => yard.id));
  const unknown = wanted.findIndex((partyId) => !known.has(partyId));
  if (unknown >= 0)
    throw invalidField(`/partyIds/${unknown}`, 'This is no yard of this survey; invite it first.');

  const added = yards.filter((yard) => wanted.includes(yard.id) && yard.findings.length === 0);
  const dropped = yards.filter((yard) => !wanted.includes(yard.id)).map((yard) => yard.id);
  const removed = await ctx.tx.findingYard.deleteMany({
    where: { findingId: id, partyId: { in: dropped } },
  });
  const made = await ctx.tx.findingYard.createMany({
    data: added.map((yard) => ({
      firmId,
      surveyId,
      findingId: id,
      partyId: yard.id,
      personId: yard.personId,
    })),
    skipDuplicates: true,
  });
  if (removed.count + made.count > 0) {
    const names = yards.filter((yard) => wanted.includes(yard.id)).map((yard) => yard.name);
    await recordEvent(ctx, {
      ...{ firmId, surveyId, findingId: id, kind: 'finding.yards-named', role },
      data: { names: names.join(', ') },
    });
  }
  return { partyIds: wanted };
}

/** Gives a yard that is being invited its findings. @throws Refusal `invalid-input` for one the actor doesn't see */
export async function giveFindings(
  ctx: Ctx,
  party: { id: string; firmId: string; surveyId: string; personId: string },
  findingIds: readonly string[],
): Promise<void> {
  const wanted = [...new Set(findingIds)];
  const found = await ctx.tx.finding.findMany({
    where: { AND: [{ id: { in: wanted }, surveyId: party.surveyId }, visibleFindings(ctx.actor)] },
    select: { id: true },
  });
  const known = new Set(found.map((finding) => finding.id));
  const unknown = wanted.findIndex((findingId) => !known.has(findingId));
  if (unknown >= 0) throw invalidField(`/findingIds/${unknown}`, 'This is no finding of this survey.');
  const { firmId, surveyId, personId } = party;
  await ctx.tx.findingYard.createMany({
    data: wanted.map((findingId) => ({ firmId, surveyId, findingId, partyId: party.id, personId })),
  });
}
