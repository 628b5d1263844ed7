import { type PersonActor, sightOf } from '@garboard/core/access/actor';
import { listClearances } from '@garboard/core/clearance/list-clearances';
import type { Ctx } from '@garboard/core/context';
import { getFinding } from '@garboard/core/findings/get-finding';
import { listFindings } from '@garboard/core/findings/list-findings';
import { withdrawFinding } from '@garboard/core/findings/withdraw-finding';
import { listInventory } from '@garboard/core/inventory/list-inventory';
import { listParties } from '@garboard/core/parties/list-parties';
import { removeParty } from '@garboard/core/parties/remove-party';
import { updateParty } from '@garboard/core/parties/update-party';
import { getPhoto } from '@garboard/core/photos/get-photo';
import { Refusal } from '@garboard/core/problems';
import { getReportData } from '@garboard/core/reports/get-report-data';
import { getReview } from '@garboard/core/reviews/get-review';
import { getSurvey } from '@garboard/core/surveys/get-survey';
import { updateSurvey } from '@garboard/core/surveys/update-survey';
import { getVessel } from '@garboard/core/vessels/get-vessel';
import { inTransaction } from '@garboard/db/database';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { type Asker, buildAskers, buildPlace, buildStaffedFirm, type Place } from './world.ts';

// The first lock (scopes, permission table) is left out or fooled here: what is left is row-level security.

/** Whether a party sees rows of its survey; `held` when its contents are withheld. */
type Sees = (asker: Asker, held: boolean) => boolean;
const everyParty: Sees = () => true;
const nobody: Sees = () => false;
const readers: Sees = (a, held) => !held && a.released && a.role !== 'yard';
const ofFinding: Sees = (a, held) => !held && a.released && (a.role !== 'yard' || a.assigned);
const ofEvidence: Sees = (a, held) =>
  ofFinding(a, held) && ['owner', 'yard', 'insurer', 'buyer'].includes(a.role);
const pays: Sees = (a) => a.client;
const aboard: Sees = (a) => ['owner', 'buyer', 'broker', 'yard'].includes(a.role);

/** Of each table with firm_id: which parties to a survey see its rows of that survey. Nobody else outside the firm does. */
const levels = new Map<string, Sees>();
const put = (sees: Sees, ...tables: string[]) => {
  for (const table of tables) levels.set(table, sees);
};
put(everyParty, 'surveys', 'attendances', 'vessels', 'firms', 'parties');
put(readers, 'reports', 'report_photos');
put(ofFinding, 'findings', 'finding_photos', 'finding_yards', 'photos', 'worksheets', 'finding_comments');
// Who pays also sees to whom the report was shown.
put((a, held) => ofFinding(a, held) || a.client, 'events');
put(ofEvidence, 'clearances', 'clearance_files', 'due_extensions', 're_inspections', 're_inspection_items');
put(pays, 'share_links', 'share_viewings', 'quotations', 'invoices');
put(aboard, 'visits');
put(
  nobody,
  ...[
    'coverage_answers',
    'inventory_items',
    'reviews',
    'review_comments',
    'deleted_findings',
    'photo_uploads',
    'survey_imports',
    'import_photos',
    'imported_rows',
    'firm_exports',
    'former_ids',
  ],
  ...['firm_catalogue_entries', 'firm_catalogue_words', 'firm_members', 'signing_keys', 'survey_counters'],
  ...[
    'photo_prints',
    'event_links',
    'event_heads',
    'due_reminders',
    'overdue_rounds',
    'firm_rates',
    'firm_terms',
  ],
  ...['invoice_counters', 'invoice_payments', 'survey_releases', 'visit_asks'],
);
/** Of a person's own account, whatever the survey. */
const ownAccount = new Set([
  'api_keys',
  'saved_views',
  'notices',
  'calendar_feeds',
  'webhook_endpoints',
  'webhook_deliveries',
]);

let server: TestServer;
let owner: Client;
let askers: Asker[];
let places: Place[];
let tables: { name: string; survey: string }[];

beforeAll(async () => {
  server = await startServer();
  const [firm, other] = [await buildStaffedFirm(server), await buildStaffedFirm(server)];
  askers = await buildAskers(server, firm);
  const parties = askers.slice(3);
  const common = { decidedBy: 'insurer', askers: parties } as const;
  places = [
    await buildPlace(server, firm, { ...common, name: 'own', held: false }),
    await buildPlace(server, firm, { ...common, name: 'withheld', held: true }),
    await buildPlace(server, firm, { ...common, name: 'same firm', held: false, askers: [] }),
    await buildPlace(server, other, { ...common, name: 'other firm', held: false, askers: [] }),
  ];
  owner = new Client({ connectionString: server.databaseUrl });
  await owner.connect();
  // By which column each table tells the survey, or how it is found.
  const { rows } = await owner.query(`
    SELECT c.relname AS name, bool_or(a.attname = 'survey_id') AS has
    FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid
    WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace
    GROUP BY c.relname
    HAVING bool_or(a.attname = 'firm_id') OR c.relname = 'firms' ORDER BY 1`);
  const found: Record<string, string> = {
    surveys: 't.id = $1',
    firms: 't.id = (SELECT firm_id FROM surveys WHERE id = $1)',
    vessels: 't.id = (SELECT vessel_id FROM surveys WHERE id = $1)',
    finding_photos: 't.finding_id IN (SELECT id FROM findings WHERE survey_id = $1)',
    report_photos: 't.report_id IN (SELECT id FROM reports WHERE survey_id = $1)',
    clearance_files: 't.clearance_id IN (SELECT id FROM clearances WHERE survey_id = $1)',
    photo_prints: 't.photo_id IN (SELECT id FROM photos WHERE survey_id = $1)',
    event_links: 't.event_id IN (SELECT id FROM events WHERE survey_id = $1)',
  };
  const ofFirm = 't.firm_id = (SELECT firm_id FROM surveys WHERE id = $1)';
  tables = rows.map(({ name, has }) => ({
    name,
    survey: has ? 't.survey_id = $1' : (found[name] ?? ofFirm),
  }));
}, 120_000);
afterAll(async () => {
  await owner?.end();
  await server?.close();
});

/** Who the person is, as the session would say. */
function actorOf({ person, role }: Asker): PersonActor {
  const firmId = places[0]?.firmId ?? '';
  const staff = role === 'principal' || role === 'surveyor' || role === 'office';
  const { id: personId, name, email } = person;
  return {
    kind: 'person',
    personId,
    name,
    email,
    memberships: staff ? [{ firmId, role }] : [],
    firmIds: [firmId],
  };
}

/** Primary keys that exist of a survey, as the owner finds them, and those that a sight leaves. */
async function ids(table: { name: string; survey: string }, place: Place): Promise<string[]> {
  const text = `SELECT t.ctid::text AS id FROM ${table.name} t WHERE ${table.survey}`;
  return (await owner.query(text, [place.ids.surveys])).rows.map((row) => row.id);
}

describe('row-level security alone', () => {
  it('knows every table with a firm', () => {
    const unknown = tables.map((t) => t.name).filter((name) => !levels.has(name) && !ownAccount.has(name));
    expect(unknown).toEqual([]);
  });

  it('shows each person the rows of their sight, in every table, and no others', {
    timeout: 120_000,
  }, async () => {
    let looked = 0;
    for (const asker of askers) {
      const sight = sightOf(actorOf(asker));
      const wrong = await inTransaction(server.db, sight, async (tx) => {
        const found: string[] = [];
        for (const table of tables) {
          const all = await tx.$queryRawUnsafe<{ id: string }[]>(
            `SELECT t.ctid::text AS id FROM ${table.name} t`,
          );
          const seen = new Set(all.map((row) => row.id));
          for (const place of places) {
            const there = await ids(table, place);
            const shown = there.filter((id) => seen.has(id)).length;
            looked += 1;
            const staff = asker.role === 'principal' || asker.role === 'surveyor' || asker.role === 'office';
            if (ownAccount.has(table.name)) continue;
            const sees = levels.get(table.name) ?? nobody;
            const may = staff ? place.name !== 'other firm' : place.theirs && sees(asker, place.held);
            const home = table.name === 'firms' && place.firmId === places[0]?.firmId;
            if (there.length > 0 && shown > 0 !== (may || home)) {
              found.push(`${table.name} of ${place.name}: ${shown} of ${there.length}`);
            }
          }
        }
        return found;
      });
      expect({ who: asker.name, wrong }).toEqual({ who: asker.name, wrong: [] });
    }
    console.log(`Row-level security: ${looked} looks, ${tables.length} tables, ${askers.length} people`);
    expect(looked).toBeGreaterThan(2000);
  });

  it('lets no party write what isn’t theirs to write', async () => {
    const [own, , same] = places as [Place, Place, Place, Place];
    const forbidden = [
      `UPDATE surveys SET scope = 'x' WHERE id = '${own.ids.surveys}'`,
      `UPDATE vessels SET name = 'x' WHERE id = '${own.ids.vessels}'`,
      `UPDATE reports SET pages = 9 WHERE id = '${own.ids.reports}'`,
      `UPDATE firms SET name = 'x' WHERE id = '${own.firmId}'`,
      `UPDATE finding_yards SET person_id = person_id WHERE finding_id = '${own.ids.findings}'`,
      `DELETE FROM findings WHERE id = '${own.ids.findings}'`,
      `DELETE FROM parties WHERE survey_id = '${own.ids.surveys}'`,
      `DELETE FROM clearances WHERE id = '${own.ids.clearances}'`,
      `UPDATE parties SET client = true WHERE survey_id = '${own.ids.surveys}'`,
      `UPDATE findings SET title = 'x' WHERE id = '${own.ids.findings}'`,
      `UPDATE findings SET issued = '{}' WHERE id = '${own.ids.findings}'`,
      `UPDATE findings SET state = 'cleared' WHERE survey_id = '${same.ids.surveys}'`,
      `UPDATE findings SET state = 'draft' WHERE id = '${own.ids.findings}'`,
      `UPDATE clearances SET statement = 'x' WHERE id = '${own.ids.clearances}'`,
      `DELETE FROM events WHERE survey_id = '${own.ids.surveys}'`,
      `INSERT INTO firm_members (id, firm_id, person_id, role)
         SELECT gen_random_uuid(), '${own.firmId}', id, 'principal' FROM people LIMIT 1`,
      `INSERT INTO parties (id, firm_id, survey_id, person_id, role, name, released)
         SELECT gen_random_uuid(), '${own.firmId}', '${own.ids.surveys}', id, 'buyer', 'x', true FROM people LIMIT 1`,
      `INSERT INTO parties (id, firm_id, survey_id, person_id, role, name, released)
         SELECT gen_random_uuid(), '${own.firmId}', '${same.ids.surveys}', id, 'yard', 'x', true FROM people LIMIT 1`,
    ];
    for (const asker of askers.slice(3)) {
      for (const statement of forbidden) {
        const changed = await inTransaction(server.db, sightOf(actorOf(asker)), (tx) =>
          tx.$executeRawUnsafe(statement),
        ).catch((error: Error) => {
          expect(error.message).toMatch(/row-level security|permission denied|may not change/);
          return 0;
        });
        expect({ who: asker.name, statement, changed }).toEqual({ who: asker.name, statement, changed: 0 });
      }
    }
  });
});

describe('use cases whose scopes see everything', () => {
  it('still come to nothing for who shouldn’t see it', { timeout: 120_000 }, async () => {
    let tried = 0;
    for (const asker of askers) {
      const actor = actorOf(asker);
      const fooled: PersonActor = {
        ...actor,
        memberships: places.map((place) => ({ firmId: place.firmId, role: 'principal' as const })),
      };
      for (const place of places) {
        const staff = actor.memberships.length > 0;
        if (staff && place.name !== 'other firm') continue;
        for (const [name, { sees, run }] of Object.entries(attempts)) {
          if (!staff && place.theirs && sees(asker, place.held)) continue;
          const outcome = await inTransaction(server.db, sightOf(actor), (tx) =>
            run({ actor: fooled, tx, store: server.store, clock: () => new Date(), log: console }, place),
          ).then(
            (answer) => JSON.stringify(answer ?? 'done'),
            (error: Error) => (error instanceof Refusal ? 'refused' : error.message),
          );
          tried += 1;
          const nothing =
            /^refused$|^\{"items":\[\]|row-level security|may not change|"reached":null|"asked":null/;
          expect({ who: asker.name, place: place.name, name, outcome }).toEqual({
            ...{ who: asker.name, place: place.name, name },
            outcome: expect.stringMatching(nothing),
          });
        }
      }
    }
    console.log(`Scopes that see everything: ${tried} attempts came to nothing`);
    expect(tried).toBeGreaterThan(500);
  });
});

const page = { limit: 50 };
const attempts: Record<string, { sees: Sees; run: (ctx: Ctx, place: Place) => Promise<unknown> }> = {
  getSurvey: { sees: everyParty, run: (ctx, { ids: at }) => getSurvey(ctx, at.surveys ?? '') },
  getVessel: { sees: everyParty, run: (ctx, { ids: at }) => getVessel(ctx, at.vessels ?? '') },
  getFinding: { sees: ofFinding, run: (ctx, { ids: at }) => getFinding(ctx, at.findings ?? '') },
  listFindings: {
    sees: ofFinding,
    run: (ctx, { ids: at }) => listFindings(ctx, { ...page, surveyId: at.surveys ?? '' }),
  },
  getPhoto: { sees: ofFinding, run: (ctx, { ids: at }) => getPhoto(ctx, at.photos ?? '') },
  getReportData: { sees: readers, run: (ctx, { ids: at }) => getReportData(ctx, at.reports ?? '') },
  listClearances: {
    sees: ofEvidence,
    run: (ctx, { ids: at }) => listClearances(ctx, { query: page, findingId: at.findings ?? '' }),
  },
  listInventory: {
    sees: nobody,
    run: (ctx, { ids: at }) => listInventory(ctx, { ...page, surveyId: at.surveys ?? '' }),
  },
  getReview: {
    sees: nobody,
    run: async (ctx, { ids: at }) => ({ asked: (await getReview(ctx, at.surveys ?? '')).latest }),
  },
  listParties: {
    sees: everyParty,
    run: (ctx, { ids: at }) => listParties(ctx, { ...page, surveyId: at.surveys ?? '' }),
  },
  updateSurvey: {
    sees: nobody,
    run: (ctx, { ids: at }) => updateSurvey(ctx, { id: at.surveys ?? '', patch: { scope: 'x' } }),
  },
  withdrawFinding: {
    sees: nobody,
    run: (ctx, { ids: at }) => withdrawFinding(ctx, { id: at.findings ?? '', reason: 'x' }),
  },
  updateParty: {
    sees: pays,
    run: (ctx, { ids: at }) =>
      updateParty(ctx, { surveyId: at.surveys ?? '', partyId: at.partyId ?? '', patch: { released: true } }),
  },
  removeParty: {
    sees: nobody,
    run: (ctx, { ids: at }) => removeParty(ctx, { surveyId: at.surveys ?? '', partyId: at.partyId ?? '' }),
  },
};
