import type { FieldSpec } from './fieldSpec.ts';

const place = 'units';

/** Fields that may be given in the same units share a usual one. */
const kindOf = (field: FieldSpec): string =>
  field.units
    .map((unit) => unit.key)
    .sort()
    .join(' ');

function kept(): Record<string, string> {
  try {
    return JSON.parse(localStorage.getItem(place) ?? '{}') as Record<string, string>;
  } catch {
    return {};
  }
}

/** The unit this person last chose for such a field on this machine, else the field's own. */
export function usualUnit(field: FieldSpec): string {
  const last = kept()[kindOf(field)];
  return field.units.some((unit) => unit.key === last) && last ? last : field.unit;
}

/** Remembers a choice of unit for fields of the same kind. */
export function rememberUnit(field: FieldSpec, unit: string): void {
  localStorage.setItem(place, JSON.stringify({ ...kept(), [kindOf(field)]: unit }));
}
