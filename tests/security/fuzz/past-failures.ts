import type { Asked } from './request.ts';

/** Requests that were once answered wrongly, each with what the answer was. */
export const pastFailures: { was: string; request: Asked }[] = [];
