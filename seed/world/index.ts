import { coverage } from './coverage.ts';
import { inventory } from './inventory.ts';
import { firms, people } from './people.ts';
import { surveys } from './surveys.ts';
import type { World } from './types.ts';
import { vessels } from './vessels.ts';
import { worksheets } from './worksheets.ts';

/** The whole invented world the demonstration is loaded from. */
export const world: World = { firms, people, vessels, surveys, worksheets, coverage, inventory };
