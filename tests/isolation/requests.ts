import type { Route } from '@garboard/contract/routes';
import { newId } from '@garboard/db/ids';
import { buildJpeg, type Signed } from '@garboard/seed/builders';
import type { Caller, TestServer } from '../support/server.ts';
import { bodies } from './bodies.ts';
import type { Place } from './world.ts';

/** A route's address with the ids of a place; parameters that name nothing of a place's get an id of nobody's. */
export function addressOf(name: string, route: Route, ids: Place['ids']): string {
  return route.path
    .replace(/\{(id|key)\}/, ids[name] ?? ids[route.path.split('/')[2] ?? ''] ?? newId())
    .replace('{system}', 'hull')
    .replace('{kind}', 'gas-leak-down')
    .replace('{photoId}', ids.photos ?? '')
    .replace(
      /\{(\w+)\}/g,
      (_, parameter: string) => ids[`${name}.${parameter}`] ?? ids[parameter] ?? newId(),
    );
}

const jpeg = buildJpeg(4);

/** Makes a route's request as this person, with a body that passes validation. @returns the status of the answer */
export async function statusOf(
  server: TestServer,
  { name, route, person, ids }: { name: string; route: Route; person: Signed | null; ids: Place['ids'] },
): Promise<number> {
  const address = addressOf(name, route, ids);
  const body = bodies[name];
  const sent = typeof body === 'function' ? body(ids) : body;
  if (route.form) {
    const method = route.method.toLowerCase() as keyof Caller;
    const request = server
      .as(person)
      [method](address)
      .attach('file', await jpeg, 'x.jpg');
    for (const [field, value] of Object.entries(sent ?? {})) request.field(field, String(value));
    return (await request).status;
  }
  // Past the network: sockets took a third of the time of so many requests.
  const answer = await server.app.inject({
    ...{ method: route.method, url: address },
    headers: person ? { authorization: `Bearer ${person.token}` } : {},
    ...(route.body ? { payload: (sent ?? {}) as object } : {}),
  });
  return answer.statusCode;
}
