import { createQuotation } from '@garboard/core/engagement/create-quotation';
import { acceptQuotation } from '@garboard/core/engagement/decide-quotation';
import { ratesOf } from '@garboard/core/engagement/firm-rates';
import { putFirmRates } from '@garboard/core/engagement/put-firm-rates';
import { saveFirmTerms } from '@garboard/core/engagement/save-firm-terms';
import { sendQuotation } from '@garboard/core/engagement/send-quotation';
import { createInvoice } from '@garboard/core/invoices/create-invoice';
import { recordPayment } from '@garboard/core/invoices/record-payment';
import { sendInvoice } from '@garboard/core/invoices/send-invoice';
import { listParties } from '@garboard/core/parties/list-parties';
import { answerVisit } from '@garboard/core/visits/answer-visit';
import { createVisit } from '@garboard/core/visits/create-visit';
import { addDays } from '@garboard/trade/due-dates';
import { feeLines } from '@garboard/trade/fees';
import { engagements, rates } from '../world/engagement.ts';
import type { EngagementSpec, SurveySpec, World } from '../world/types.ts';
import { actorOf, as, calendarDay, dayFrom, type Stage } from './stage.ts';

/** An address of the documentation’s network, from which the clients of the world accept. */
const clientAddress = '203.0.113.24';

/** The firms say what they charge and on what terms. */
export async function setRates(stage: Stage, world: World): Promise<void> {
  for (const { firm, terms, ...spec } of rates) {
    const principal = world.people.find((p) => p.firm?.key === firm && p.firm.role === 'principal');
    const currency = world.firms.find((f) => f.key === firm)?.currency ?? 'EUR';
    const firmId = stage.firmIds.get(firm) ?? '';
    await as(stage, actorOf(stage, principal?.key ?? ''), dayFrom(stage, -90), async (ctx) => {
      await putFirmRates(ctx, {
        firmId,
        rates: {
          ...{ ...spec, currency, lengthUnit: 'm', distanceUnit: 'km', taxName: 'VAT', taxRate: 20_000 },
          ...{ quotationDays: 30, paymentDays: 14 },
        },
      });
      await saveFirmTerms(ctx, { firmId, text: terms });
    });
  }
}

interface Playing {
  survey: SurveySpec;
  surveyId: string;
  lengthM: number;
  /** The day, from loading, on which the firm quotes. */
  day: number;
}

/** Plays what surrounds a survey: quotation, acceptance, visit, invoice and payment. */
export async function playEngagement(stage: Stage, playing: Playing): Promise<void> {
  const spec = engagements.find(({ survey }) => survey === playing.survey.key);
  const payer = playing.survey.parties.find(({ pays }) => pays);
  if (!spec || !payer) return;
  const quotationId = await quote(stage, playing, { spec, payer: payer.person });
  if (spec.visit) await arrange(stage, playing, spec.visit);
  if (spec.invoiced) await invoice(stage, playing, { spec, quotationId });
}

async function quote(
  stage: Stage,
  { survey, surveyId, lengthM, day }: Playing,
  { spec, payer }: { spec: EngagementSpec; payer: string },
): Promise<string> {
  const surveyor = actorOf(stage, survey.surveyor);
  const client = actorOf(stage, payer);
  const sent = await as(stage, surveyor, dayFrom(stage, day, 11), async (ctx) => {
    const { items } = await listParties(ctx, { surveyId, limit: 50 });
    const party = items.find(({ email }) => email === client.email);
    const firm = await ratesOf(ctx, stage.firmIds.get(survey.firm) ?? '');
    const lines = feeLines(firm, { lengthM, hours: spec.hours, distance: spec.travel });
    const draft = await createQuotation(ctx, {
      surveyId,
      quotation: {
        partyId: party?.id ?? '',
        lines: lines.map(({ net: _net, tax: _tax, ...line }) => line),
        scope: survey.scope,
        validUntil: addDays(calendarDay(stage, day), 30),
      },
    });
    return sendQuotation(ctx, { id: draft.id });
  });
  if (spec.accepted) {
    await as(stage, client, dayFrom(stage, day, 15), (ctx) =>
      acceptQuotation(ctx, {
        ...{ id: sent.id, typedName: client.name, from: clientAddress },
        textSha256: sent.textSha256 ?? '',
      }),
    );
  }
  return sent.id;
}

async function arrange(
  stage: Stage,
  { survey, surveyId, day }: Playing,
  visit: NonNullable<EngagementSpec['visit']>,
): Promise<void> {
  const surveyor = actorOf(stage, survey.surveyor);
  const on = calendarDay(stage, visit.day);
  const made = await as(stage, surveyor, dayFrom(stage, day, 12), async (ctx) => {
    const { items } = await listParties(ctx, { surveyId, limit: 50 });
    return createVisit(ctx, {
      surveyId,
      visit: {
        ...{ startsAt: `${on}T09:00:00.000Z`, endsAt: `${on}T13:00:00.000Z`, condition: 'ashore' },
        ...{ place: visit.place, note: visit.note },
        partyIds: items.filter(({ role }) => visit.asks.includes(role)).map(({ id }) => id),
      },
    });
  });
  for (const [person, note] of Object.entries(visit.answers)) {
    await as(stage, actorOf(stage, person), dayFrom(stage, day, 17), (ctx) =>
      answerVisit(ctx, { id: made.id, answer: 'confirmed', note }),
    );
  }
}

async function invoice(
  stage: Stage,
  { survey, surveyId, day }: Playing,
  { spec, quotationId }: { spec: EngagementSpec; quotationId: string },
): Promise<void> {
  const surveyor = actorOf(stage, survey.surveyor);
  const billed = day + 2;
  const sent = await as(stage, surveyor, dayFrom(stage, billed, 12), async (ctx) => {
    const draft = await createInvoice(ctx, { surveyId, invoice: { quotationId } });
    return sendInvoice(ctx, { id: draft.id });
  });
  if (!spec.paid) return;
  const amount = spec.paid === 'whole' ? sent.total : Math.floor(sent.total / 2);
  await as(stage, surveyor, dayFrom(stage, billed + 1, 9), (ctx) =>
    recordPayment(ctx, {
      id: sent.id,
      payment: { amount, paidOn: calendarDay(stage, billed + 1), note: 'Bank transfer' },
    }),
  );
}
