import type { Audience, NoticeRule } from '@garboard/trade/notice-kinds';
import type { Ctx } from '../context.ts';

/** What of an event says whom it concerns. */
export interface ToldEvent {
  firmId: string;
  surveyId: string | null;
  findingId: string | null;
  actorId: string | null;
}

interface Member {
  personId: string;
  role: string;
}
interface Party extends Member {
  id: string;
  released: boolean;
  held: boolean;
  client: boolean;
}

/** The people whom an event concerns by its rule, each once: without who did it, and without who may not see it. */
export async function audienceOf(
  ctx: Ctx,
  event: ToldEvent,
  rule: NoticeRule,
  named: readonly string[],
): Promise<string[]> {
  const { firmId, surveyId, findingId } = event;
  const members: Member[] = await ctx.tx.firmMember.findMany({
    where: { firmId },
    select: { personId: true, role: true },
  });
  const survey = surveyId
    ? await ctx.tx.survey.findUnique({
        where: { id: surveyId },
        select: { surveyorId: true, clearanceDecidedBy: true, parties: true },
      })
    : null;
  const finding = findingId
    ? await ctx.tx.finding.findUnique({
        where: { id: findingId },
        select: {
          state: true,
          yards: { select: { partyId: true } },
          clearances: { orderBy: { id: 'desc' }, take: 1, select: { sentById: true } },
        },
      })
    : null;
  const assigned = new Set(finding?.yards.map((y) => y.partyId));
  // A yard sees what was assigned to it and nothing else that was issued.
  const seeing = (survey?.parties ?? []).filter((p: Party) =>
    rule.sight === 'survey'
      ? true
      : rule.sight === 'issued' && p.released && !p.held && (p.role !== 'yard' || assigned.has(p.id)),
  );
  const staff = new Set(members.map((m) => m.personId));
  const allowed = new Set([...staff, ...seeing.map((p) => p.personId)]);

  const withRole = (rows: readonly Member[], ...roles: string[]) =>
    rows.filter((row) => roles.includes(row.role)).map((row) => row.personId);
  const principals = () => withRole(members, 'principal');
  const surveyor = () =>
    survey?.surveyorId && staff.has(survey.surveyorId) ? [survey.surveyorId] : principals();
  const deciders = () => {
    const insurers = withRole(seeing, 'insurer');
    return survey?.clearanceDecidedBy === 'insurer' && insurers.length > 0 ? insurers : surveyor();
  };
  const people: Record<Audience, () => (string | null | undefined)[]> = {
    named: () => [...named],
    released: () => seeing.map((p) => p.personId),
    owners: () => withRole(seeing, 'owner'),
    buyers: () => withRole(seeing, 'buyer'),
    insurers: () => withRole(seeing, 'insurer'),
    clients: () => seeing.filter((p) => p.client).map((p) => p.personId),
    yards: () => withRole(seeing, 'yard'),
    deciders,
    sender: () => [finding?.clearances[0]?.sentById],
    'whose-move': () => (finding?.state === 'evidence-sent' ? deciders() : withRole(seeing, 'owner', 'yard')),
    surveyor,
    principals,
    office: () => withRole(members, 'office'),
  };
  const found = new Set(rule.to.flatMap((audience) => people[audience]()));
  return [...found].filter((id): id is string => !!id && id !== event.actorId && allowed.has(id));
}
