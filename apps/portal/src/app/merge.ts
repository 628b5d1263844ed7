/** Whether two values of a form are the same, lists included. */
export function same(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** The fields the other person changed and that differ from what is written here. */
export function divergingKeys<V extends object>(base: V, mine: V, theirs: V): (keyof V & string)[] {
  const keys = Object.keys(mine) as (keyof V & string)[];
  return keys.filter((key) => !same(base[key], theirs[key]) && !same(mine[key], theirs[key]));
}

export type Side = 'mine' | 'theirs';

/** What to propose for a diverging field: mine where I wrote something, theirs where I left it alone. */
export function proposal<V extends object>(base: V, mine: V, key: keyof V): Side {
  return same(base[key], mine[key]) ? 'theirs' : 'mine';
}

/** Mine, with the other person's text in the fields where it was chosen. */
export function merged<V extends object>(mine: V, theirs: V, sides: Partial<Record<keyof V, Side>>): V {
  const result = { ...mine };
  for (const key of Object.keys(mine) as (keyof V)[]) {
    if (sides[key] === 'theirs') result[key] = theirs[key];
  }
  return result;
}

/** Both people's changes at once, or null when they changed the same field differently. */
export function putTogether<V extends object>(base: V, mine: V, theirs: V): V | null {
  const result = { ...mine };
  for (const key of Object.keys(mine) as (keyof V)[]) {
    const changedHere = !same(base[key], mine[key]);
    const changedThere = !same(base[key], theirs[key]);
    if (changedHere && changedThere && !same(mine[key], theirs[key])) return null;
    if (changedThere && !changedHere) result[key] = theirs[key];
  }
  return result;
}
