import type { z } from 'zod';

/**
 * A body whose every field of free text holds what `text` gives, whatever a base holds there; fields of another kind
 * are as the base has them, and left out where it has none.
 *
 * @param text what to write into a field of so many characters, named by its path
 */
export function filled(
  schema: z.core.$ZodType,
  base: unknown,
  text: (max: number, path: string) => string,
  path = '',
): unknown {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'optional':
    case 'default':
    case 'nullable':
      return filled(def.innerType, base, text, path);
    case 'pipe':
      return filled(def.in, base, text, path);
    case 'object': {
      const from = (base ?? {}) as Record<string, unknown>;
      const entries = Object.entries(def.shape).flatMap(([key, field]) => {
        const value = filled(field, from[key], text, `${path}/${key}`);
        return value === undefined ? [] : [[key, value] as const];
      });
      const made = Object.fromEntries(entries);
      // What isn't there and can't be made of words alone stays away.
      return base === undefined && !accepts(schema, made) ? undefined : made;
    }
    case 'array': {
      const items = Array.isArray(base) && base.length > 0 ? base : [undefined];
      const made = items
        .map((item, i) => filled(def.element, item, text, `${path}/${i}`))
        .filter((item) => item !== undefined && accepts(def.element, item));
      return made.length > 0 ? made : base;
    }
    case 'string': {
      if ('format' in def && def.format) return base;
      const max =
        def.checks?.map((check) => (check._zod.def as { maximum?: number }).maximum).find(Boolean) ?? 0;
      const said = text(max, path);
      return accepts(schema, said) ? said : base;
    }
    default:
      return base;
  }
}

const accepts = (schema: z.core.$ZodType, value: unknown): boolean =>
  (schema as z.ZodType).safeParse(value).success;
