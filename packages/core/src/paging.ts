import { invalidField } from './problems.ts';

export interface PageInput {
  limit: number;
  cursor?: string | undefined;
}
export interface Page<T> {
  items: T[];
  next: string | null;
}

/** Hides a sort key in an opaque cursor. */
export const encodeCursor = (key: string): string => Buffer.from(key, 'utf8').toString('base64url');

/** The sort key in a cursor. @throws Refusal when it doesn't match the form of this list's keys. */
export function decodeCursor(cursor: string | undefined, form: RegExp): string | undefined {
  if (cursor === undefined) return undefined;
  const key = Buffer.from(cursor, 'base64url').toString('utf8');
  if (!form.test(key)) {
    throw invalidField('/query/cursor', 'This cursor does not belong to this list; start again without one.');
  }
  return key;
}

export const uuidForm = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** Cuts one row too many off a list that was read with `limit + 1`, and points the cursor at the last one kept. */
export function cutPage<T>(rows: T[], limit: number, keyOf: (row: T) => string): Page<T> {
  const items = rows.slice(0, limit);
  const last = items.at(-1);
  return { items, next: rows.length > limit && last ? encodeCursor(keyOf(last)) : null };
}
