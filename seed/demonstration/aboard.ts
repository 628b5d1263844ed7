import { inventoryCreate } from '@garboard/contract/inventory';
import { replaceCoverage } from '@garboard/core/coverage/replace-coverage';
import { createInventoryItem } from '@garboard/core/inventory/create-inventory-item';
import type { MarkedDate } from '../world/types.ts';
import { actorOf, as, dayFrom, type Stage } from './stage.ts';
import type { Props } from './surveys.ts';

/** The afternoon of the first attendance. */
const whileAboard = (stage: Stage, { survey }: Props): Date =>
  dayFrom(stage, Math.min(0, survey.attendances[0]?.day ?? 0), 15);

/** Plays the surveyor's answers on how far each system was reached. */
export async function answerSystems(stage: Stage, props: Props, surveyId: string): Promise<void> {
  if (props.coverage.length === 0) return;
  const items = props.coverage.map(({ survey: _, ...item }) => item);
  await as(stage, actorOf(stage, props.survey.surveyor), whileAboard(stage, props), (ctx) =>
    replaceCoverage(ctx, { surveyId, items }),
  );
}

/** The first or the last day of a month counted from loading; a day of the calendar stays as it is. */
function markedDay(stage: Stage, date: MarkedDate | undefined, which: 'first' | 'last'): string | null {
  if (date === undefined) return null;
  if (typeof date === 'string') return date;
  const { loadedAt } = stage;
  const month = loadedAt.getUTCMonth() + date + (which === 'last' ? 1 : 0);
  return new Date(Date.UTC(loadedAt.getUTCFullYear(), month, which === 'last' ? 0 : 1))
    .toISOString()
    .slice(0, 10);
}

/** Plays the list that the surveyor made of the equipment on board. */
export async function listEquipment(stage: Stage, props: Props, surveyId: string): Promise<void> {
  const surveyor = actorOf(stage, props.survey.surveyor);
  for (const { survey: _, made, expires, ...fields } of props.inventory) {
    const item = inventoryCreate.parse({
      ...fields,
      madeOn: markedDay(stage, made, 'first'),
      expiresOn: markedDay(stage, expires, 'last'),
    });
    await as(stage, surveyor, whileAboard(stage, props), (ctx) =>
      createInventoryItem(ctx, { surveyId, item }),
    );
  }
}
