import { type FieldError, type ProblemType, problemTypes } from '@garboard/contract/problems';

/** A refusal that people can act on: its detail says what happened and what to do. */
export class Refusal extends Error {
  readonly type: ProblemType;
  readonly errors: FieldError[] | undefined;
  constructor(type: ProblemType, detail: string, errors?: FieldError[]) {
    super(detail);
    this.name = 'Refusal';
    this.type = type;
    this.errors = errors;
  }
  get status(): number {
    return problemTypes[this.type].status;
  }
}

/** Unknown, another firm's or not shared: all three look the same from outside. */
export const notFound = (what: string) =>
  new Refusal('not-found', `There is no such ${what}, or it was not shared with you.`);

export const notAllowed = (detail: string) => new Refusal('not-allowed', detail);

export const wrongState = (detail: string) => new Refusal('wrong-state', detail);

export const staleVersion = (what: string) =>
  new Refusal(
    'stale-version',
    `This ${what} was changed after you opened it. Load it again, compare, and save once more.`,
  );

export const invalidField = (pointer: string, detail: string) =>
  new Refusal('invalid-input', detail, [{ pointer, detail }]);
