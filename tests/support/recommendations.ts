import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { PartyRole } from '@garboard/trade/vocabulary';
import type { TestServer } from './server.ts';

/** The rest of what was issued of a finding. */
const issuedWords = {
  ...{ observed: 'Seen.', consequence: '', recommendation: 'Renew.', withinDays: null, harms: [] },
  ...{ references: [], photos: [], cost: null, items: [] },
};

interface Firm {
  id: string;
}

/** An issued survey of a boat of its own, with these people as its parties. */
export async function buildIssuedSurvey(
  server: TestServer,
  firm: Firm,
  props: {
    boat: string;
    number: string;
    state?: string;
    decidedBy?: 'insurer' | 'surveyor';
    surveyorId?: string;
    parties?: { id: string; role: PartyRole; released?: boolean }[];
  },
): Promise<{ id: string; vesselId: string }> {
  const [id, vesselId] = [newId(), newId()];
  const { boat, number, state = 'issued', decidedBy = 'insurer', surveyorId = null, parties = [] } = props;
  await inTransaction(server.db, [firm.id], async (tx) => {
    await tx.vessel.create({ data: { id: vesselId, firmId: firm.id, name: boat } });
    await tx.survey.create({
      data: {
        ...{ id, firmId: firm.id, vesselId, number, purpose: 'insurance', state, surveyorId },
        ...{ clearanceDecidedBy: decidedBy, issuedAt: state === 'issued' ? new Date() : null },
      },
    });
    for (const { id: personId, role, released = true } of parties) {
      await tx.party.create({
        data: { id: newId(), firmId: firm.id, surveyId: id, personId, role, name: role, released },
      });
    }
  });
  return { id, vesselId };
}

/** An issued finding that must be cleared; one whose evidence was sent has that evidence. */
export async function buildRecommendation(
  server: TestServer,
  firm: Firm,
  surveyId: string,
  props: {
    number: number;
    title: string;
    state?: string;
    dueOn?: string | null;
    urgency?: string;
    system?: string;
    sentAt?: string;
  },
): Promise<{ id: string; clearanceId: string }> {
  const { number, title, state = 'open', urgency = 'within-days', system = 'fuel' } = props;
  const [id, clearanceId] = [newId(), newId()];
  const dueOn = props.dueOn ? new Date(`${props.dueOn}T00:00:00Z`) : null;
  await inTransaction(server.db, [firm.id], async (tx) => {
    await tx.finding.create({
      data: {
        ...{ id, firmId: firm.id, surveyId, number, title, system, urgency, state, dueOn, clearing: true },
        ...{
          withinDays: urgency === 'within-days' ? 30 : null,
          issued: { ...issuedWords, title, system, urgency },
        },
      },
    });
    if (state !== 'evidence-sent') return;
    await tx.clearance.create({
      data: {
        ...{ id: clearanceId, firmId: firm.id, surveyId, findingId: id, statement: 'Done.' },
        ...{ workDoneBy: 'The yard', workDoneOn: new Date('2026-05-01'), sentByName: 'Orla' },
        ...{ sentByRole: 'owner', sentAt: new Date(props.sentAt ?? '2026-05-02T08:00:00Z') },
      },
    });
  });
  return { id, clearanceId };
}
