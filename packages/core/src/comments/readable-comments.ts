import type { FindingComment } from '@garboard/contract/finding-comments';
import type { Prisma } from '@garboard/db/database';
import type { PartyRole } from '@garboard/trade/vocabulary';
import { type Actor, actorId } from '../access/actor.ts';
import { isStaff, type Standing } from '../access/policy.ts';

/** Comments on a survey's findings that the actor may read: all for the firm, else one's own and those meant for one. */
export function readableComments(actor: Actor, survey: Standing): Prisma.FindingCommentWhereInput {
  if (isStaff(actor, survey)) return {};
  const roles = survey.parties.filter((p) => p.released && !p.held).map((p) => p.role);
  const personId = actorId(actor);
  const meant: Prisma.FindingCommentWhereInput = { visibleTo: { hasSome: roles } };
  return personId ? { OR: [meant, { byId: personId }] } : meant;
}

export function presentComment(row: Prisma.FindingCommentGetPayload<object>, actor: Actor): FindingComment {
  const own = row.byId !== null && row.byId === actorId(actor);
  return {
    id: row.id,
    findingId: row.findingId,
    text: row.text,
    visibleTo: row.visibleTo as PartyRole[],
    by: { name: row.byName, role: row.byRole },
    at: row.at.toISOString(),
    removedAt: row.removedAt?.toISOString() ?? null,
    may: { remove: own && row.removedAt === null },
  };
}
