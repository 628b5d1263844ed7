import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { type Day, dayIn } from '@garboard/trade/due-dates';
import { fromDay, writtenDay } from '../clearance/extension-rows.ts';
import type { Item } from '../clearance/items.ts';
import { invalidField } from '../problems.ts';

/** Items as they are kept: a new one gets an id. Nothing when they weren't given. */
export function itemColumns(items: readonly { id?: string | undefined; text: string }[] | undefined) {
  if (items === undefined) return {};
  const kept: Item[] = items.map(({ id = newId(), text }) => ({ id, text }));
  return { items: kept as unknown as Prisma.InputJsonArray };
}

export interface DueByHand {
  /** The day wished; undefined when it wasn't given. */
  dueOnSet: Day | null | undefined;
  urgency: string;
  /** When the survey was first issued with this finding; null for a draft. */
  issuedAt: Date | null;
  timeZone: string;
  now: Date;
}

/**
 * A due date set by hand as it is kept. A note asks for nothing, so it takes none; one that stands is dropped when
 * the finding becomes a note.
 *
 * @throws Refusal `invalid-input` for a day before the finding is, or can be, issued
 */
export function dueByHandColumns({ dueOnSet, urgency, issuedAt, timeZone, now }: DueByHand) {
  if (urgency === 'note') {
    if (dueOnSet)
      throw invalidField('/dueOnSet', 'A note for the owner asks for nothing, so it has no due date.');
    return { dueOnSet: null };
  }
  if (dueOnSet === undefined) return {};
  if (dueOnSet === null) return { dueOnSet: null };
  const earliest = dayIn(timeZone, issuedAt ?? now);
  if (dueOnSet < earliest) {
    const why = issuedAt
      ? 'the day on which the report was issued'
      : 'today, and the report is not issued yet';
    throw invalidField(
      '/dueOnSet',
      `That day is before ${writtenDay(earliest)}, ${why}. Give that day or a later one.`,
    );
  }
  return { dueOnSet: fromDay(dueOnSet) };
}
