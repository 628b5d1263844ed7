import type { ProblemType } from '@garboard/contract/problems';
import { ProblemError } from './client.ts';

/** What was written can't be sent yet; the message says what is missing. */
export class Incomplete extends Error {}

/** Whether the server refused with this status. */
export function isStatus(error: unknown, status: number): boolean {
  return error instanceof ProblemError && error.problem.status === status;
}

/** Whether the server refused for this reason. */
export function isProblem(error: unknown, type: ProblemType): boolean {
  return error instanceof ProblemError && error.problem.type === `/problems/${type}`;
}

/** What the server said about one field, by the last part of its pointer: `/attendances/0/date` or `/title`. */
export function fieldError(error: unknown, pointer: string): string | undefined {
  if (!(error instanceof ProblemError)) return undefined;
  return error.problem.errors?.find((e) => e.pointer.replace(/^#/, '') === pointer)?.detail;
}

/** Any failure as a heading, a sentence and the fields it names. */
export function explain(error: unknown): { title: string; detail: string; fields: string[] } {
  if (error instanceof ProblemError) {
    const { title, detail, errors } = error.problem;
    return {
      title,
      detail: detail + retryHint(error.retryAfter),
      fields: (errors ?? []).map((e) => `${fieldName(e.pointer)}${e.detail}`),
    };
  }
  if (error instanceof Incomplete) return { title: 'Not saved yet', detail: error.message, fields: [] };
  if (error instanceof TypeError) {
    return {
      title: 'The server could not be reached',
      detail: 'Look at your connection and try again. What you wrote is still here.',
      fields: [],
    };
  }
  return { title: 'Something went wrong', detail: 'Reload the page and try again.', fields: [] };
}

function fieldName(pointer: string): string {
  const name = pointer.replace(/^#?\//, '').replaceAll('/', ', ');
  const words = name.includes('.') ? name : name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  return words ? `${words}: ` : '';
}

/** When to try again, in words; empty when nothing is known. */
export function retryHint(seconds: number | null): string {
  if (!seconds) return '';
  if (seconds < 90) return ` Try again in ${seconds} seconds.`;
  return ` Try again in ${Math.ceil(seconds / 60)} minutes.`;
}
