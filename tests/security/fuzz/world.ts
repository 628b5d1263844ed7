import { type Route, type RouteName, routes } from '@garboard/contract/routes';
import { newId } from '@garboard/db/ids';
import { buildJpeg } from '@garboard/seed/builders';
import { undone } from '../../isolation/undone.ts';
import { buildAskers, buildPlace, buildStaffedFirm } from '../../isolation/world.ts';
import { startServer, type TestServer } from '../../support/server.ts';
import { startTestWorker, type TestWorker } from '../../support/worker.ts';
import { hangUp, type Target } from './ask.ts';
import type { Offer } from './request.ts';

export interface FuzzWorld {
  server: TestServer;
  target: Target;
  offer: Offer;
  /** What requests do is undone while this is true. */
  undo: boolean;
  close(): Promise<void>;
}

/** A survey whose report isn't issued yet, so that what can only be written before can be. */
async function buildDraft(server: TestServer, firm: Awaited<ReturnType<typeof buildStaffedFirm>>) {
  const surveyor = server.as(firm.surveyor);
  const made = async (path: string, body: object) => (await surveyor.post(path).send(body).expect(201)).body;
  const vessel = await made('/v1/vessels', { name: 'Draft' });
  const survey = await made('/v1/surveys', { vesselId: vessel.id, purpose: 'pre-purchase' });
  const at = `/v1/surveys/${survey.id}`;
  const shot = await surveyor
    .post(`${at}/photos`)
    .attach('file', await buildJpeg(11), 'd.jpg')
    .expect(201);
  const finding = await made(`${at}/findings`, { system: 'hull', title: 'Crack', urgency: 'before-use' });
  const item = await made(`${at}/inventory`, { system: 'life-saving', name: 'Raft' });
  const upload = { id: newId(), name: 'e.jpg', bytes: 5000, sha256: 'e'.repeat(64) };
  await made(`${at}/uploads`, upload);
  const party = await made(`${at}/parties`, { role: 'yard', name: 'Y', email: 'yard@fuzz.example' });
  const sample = await surveyor.get('/v1/findings-sample').expect(200);
  const sheet = await surveyor
    .post(`${at}/imports`)
    .attach('file', Buffer.from(sample.text), 'f.csv')
    .expect(201);
  const principal = server.as(firm.principal);
  const own = async (path: string, body: object): Promise<string> =>
    (await principal.post(path).send(body).expect(201)).body.id;
  const hook = {
    firmId: firm.id,
    role: 'principal',
    label: 'x',
    url: 'https://127.0.0.1:9/',
    kinds: ['report.issued'],
  };
  const ids = {
    ...{ imports: sheet.body.id, 'webhook-endpoints': await own('/v1/webhook-endpoints', hook) },
    'saved-views': await own('/v1/saved-views', { page: 'jobs', name: 'x', query: {} }),
    surveys: survey.id,
    vessels: vessel.id,
    findings: finding.id,
    inventory: item.id,
    partyId: party.id,
  };
  return { ...ids, photos: shot.body.items[0].id as string, uploads: upload.id };
}

/**
 * A firm with an issued survey of everything, one in the making and another firm’s, with every kind of person, on a
 * real server with its worker.
 */
export async function buildFuzzWorld(slowMs: number): Promise<FuzzWorld> {
  const state = { undo: false };
  const server = await startServer({ wrap: (db) => undone(db, () => state.undo) });
  const [firm, other] = [await buildStaffedFirm(server), await buildStaffedFirm(server)];
  const askers = await buildAskers(server, firm);
  const parties = askers.slice(3);
  const places: Record<string, Record<string, string>> = {
    own: (await buildPlace(server, firm, { name: 'own', decidedBy: 'insurer', held: false, askers: parties }))
      .ids,
    draft: await buildDraft(server, firm),
    other: (
      await buildPlace(server, other, { name: 'other firm', decidedBy: 'surveyor', held: false, askers: [] })
    ).ids,
  };
  const worker: TestWorker = await startTestWorker(server);
  const people = [
    ...askers.filter((asker) => asker.released),
    { name: 'another firm’s principal', person: other.principal },
  ];
  const ids = Object.fromEntries(
    Object.entries(places).flatMap(([place, of]) =>
      Object.entries(of).map(([noun, id]) => [`${place}.${noun}`, id]),
    ),
  );
  const offer: Offer = {
    askers: people.map(({ name }) => name),
    ids: Object.fromEntries(Object.entries(places).map(([place, of]) => [place, Object.keys(of)])),
    cursors: {},
  };
  const world: FuzzWorld = {
    ...{ server, offer },
    target: {
      url: server.url,
      tokens: Object.fromEntries(people.map(({ name, person }) => [name, person.token])),
      ids,
      slowMs,
    },
    get undo() {
      return state.undo;
    },
    set undo(value) {
      state.undo = value;
    },
    async close() {
      hangUp();
      await worker.close();
      await server.close();
    },
  };
  await readCursors(world, places.own ?? {}, [
    firm.principal,
    ...parties.slice(0, 1).map(({ person }) => person),
  ]);
  return world;
}

/** Keys of cursors as each list gives them, with ids and instants that are the same in every run. */
async function readCursors(
  { offer, target }: Pick<FuzzWorld, 'offer' | 'target'>,
  own: Record<string, string>,
  people: readonly { token: string }[],
): Promise<void> {
  for (const [name, route] of Object.entries(routes) as [RouteName, Route][]) {
    if (!route.query || !('cursor' in route.query.shape)) continue;
    const noun = route.path.split('/')[2] ?? '';
    const path = route.path.replace(/\{(\w+)\}/, () => own[noun] ?? newId());
    for (const { token } of people) {
      const answer = await fetch(`${target.url}${path}?limit=1`, {
        headers: { authorization: `Bearer ${token}` },
      });
      const { next } = answer.ok ? ((await answer.json()) as { next: string | null }) : { next: null };
      if (!next) continue;
      const key = Buffer.from(next, 'base64url')
        .toString('utf8')
        .replace(/[0-9a-f]{8}-[0-9a-f-]{27}/g, '0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f')
        .replace(/\d{4}-\d\d-\d\dT\d\d:\d\d/g, '2026-05-04T10:20');
      offer.cursors[name] = [key];
      break;
    }
  }
}
