import { ZxcvbnFactory } from '@zxcvbn-ts/core';
import { adjacencyGraphs, dictionary } from '@zxcvbn-ts/language-common';
import { invalidField } from '../problems.ts';

let estimator: ZxcvbnFactory | undefined;

/** Guesses, as a power of ten, that a password must be expected to withstand. */
const leastGuessesLog10 = 10;

/**
 * Refuses passwords that are among the first to be tried: common ones, runs and repeats, and what can be read off the
 * account itself.
 *
 * @param own the person's name, address and firm. @throws Refusal `invalid-input` at `/password`
 */
export function refuseCommonPassword(password: string, own: readonly string[]): void {
  // Built at first use: its lists take a tenth of a second to unpack.
  estimator ??= new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs });
  const words = ['garboard', 'survey', ...own.flatMap((text) => [text, ...text.split(/[^\p{L}\p{N}]+/u)])];
  const known = words.filter((word) => word.length > 2);
  if (estimator.check(password, known).guessesLog10 >= leastGuessesLog10) return;
  throw invalidField(
    '/password',
    'This password is too easy to guess: it is a common one, repeats itself or holds your own name. A few words that belong together only for you do well.',
  );
}
