import type { System } from '../vocabulary.ts';

/** Systems that can burn or shock whoever tests them: no entry of theirs goes without a caution. */
export const cautionedSystems: readonly System[] = ['gas', 'fuel', 'ac-electrical'];
