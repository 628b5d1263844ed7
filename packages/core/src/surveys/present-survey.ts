import type { Survey } from '@garboard/contract/surveys';
import type { Prisma } from '@garboard/db/database';
import type { AttendanceCondition, Purpose, SurveyState } from '@garboard/trade/vocabulary';
import type { Actor } from '../access/actor.ts';
import { isStaff, rolesOn, seesIssued } from '../access/policy.ts';
import { ownParties } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import type { IssuedCounts } from './count-issued.ts';

/** What a survey is read with: its vessel, attendances and the actor's own party rows. */
export const surveyInclude = (actor: Actor) =>
  ({
    firm: { select: { name: true } },
    vessel: { select: { name: true } },
    attendances: { orderBy: { ordinal: 'asc' } },
    parties: { where: ownParties(actor) },
  }) satisfies Prisma.SurveyInclude;

export type SurveyRow = Prisma.SurveyGetPayload<{ include: ReturnType<typeof surveyInclude> }>;

/** @param names names of the signing surveyors by person id */
export function presentSurvey(
  ctx: Ctx,
  row: SurveyRow,
  counts: IssuedCounts | undefined,
  costs: Survey['costs'],
  names: ReadonlyMap<string, string>,
): Survey {
  const staff = isStaff(ctx.actor, row);
  const shown = seesIssued(ctx.actor, row);
  return {
    id: row.id,
    firmId: row.firmId,
    firmName: row.firm.name,
    number: row.number,
    state: row.state as SurveyState,
    vesselId: row.vesselId,
    vesselName: row.vessel.name,
    purpose: row.purpose as Purpose,
    requestedBy: row.requestedBy,
    scope: row.scope,
    limitations: row.limitations,
    timeZone: row.timeZone,
    attendances: row.attendances.map((a) => ({
      date: a.date.toISOString().slice(0, 10),
      place: a.place,
      condition: a.condition as AttendanceCondition,
    })),
    present: row.present,
    clearanceDecidedBy: row.clearanceDecidedBy === 'surveyor' ? 'surveyor' : 'insurer',
    surveyorId: row.surveyorId,
    surveyorName: row.surveyorId ? (names.get(row.surveyorId) ?? null) : null,
    leadPhotoId: row.leadPhotoId,
    findingCount: staff ? row.findingCount : shown ? (counts?.issued ?? 0) : 0,
    photoCount: staff ? row.photoCount : null,
    openCount: shown ? (counts?.open ?? 0) : 0,
    nextDueOn: shown ? (counts?.nextDueOn ?? null) : null,
    printCosts: row.printCosts,
    costs,
    issuedAt: row.issuedAt?.toISOString() ?? null,
    myRoles: rolesOn(ctx.actor, row),
    client: row.parties.some((part) => part.client),
    released: shown,
    held: row.held,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
    version: row.version,
  };
}
