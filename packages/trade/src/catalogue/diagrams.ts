import type { Drawing } from '../drawing/svg.ts';

/** Every diagram of the catalogue, by its key. */
export const diagrams: Readonly<Record<string, Drawing>> = byKey([]);

function byKey(list: readonly Drawing[]): Record<string, Drawing> {
  return Object.fromEntries(list.map((drawing) => [drawing.key, drawing]));
}
