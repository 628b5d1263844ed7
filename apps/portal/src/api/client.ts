import type { Answer, CallArgs } from '@garboard/contract/client';
import { createClient, ProblemError, pathOf, problemFrom } from '@garboard/contract/client';
import type { RouteName } from '@garboard/contract/routes';

/** Calls an operation of the API with the session's cookie. */
export const call = createClient();

/** A name for one create, so that sending it twice makes one record. Also works on a plain-HTTP address. */
export function newIdempotencyKey(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((b) => b.toString(16).padStart(2, '0')).join('');
}

/** What a list operation answers an item of. */
export type Item<N extends RouteName> = Answer<N> extends { items: (infer I)[] } ? I : never;
export type ListName = { [N in RouteName]: Item<N> extends never ? never : N }[RouteName];
export type { Answer, CallArgs, RouteName };
export { ProblemError, pathOf, problemFrom };
