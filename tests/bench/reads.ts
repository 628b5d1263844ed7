import { officeId } from '../support/office.ts';
import { sought } from './floor-reads.ts';
import type { Bench, Comparison, Result } from './harness.ts';
import { ask } from './load.ts';
import { type Office, withOffices } from './offices.ts';

/** Ours has to reach this share of the floor’s requests a second, and its slowest answers at most these times its. */
const target = 0.6;
const targetP99 = 2;
/** How many times slower the largest office may be than the smallest. */
const targetGrowth = 1.3;
/** Pages of 50 that are turned before a page counts as deep: 50 000 recommendations, or all that there are. */
const deepPages = 1000;

interface Path {
  what: string;
  ours: string;
  floor: string;
  token: string;
}

interface Listed {
  items: { id: string; dueOn: string | null }[];
  next: string | null;
}

async function answerOf(url: string, token?: string): Promise<Listed> {
  const answer = await fetch(url, { headers: token ? { authorization: `Bearer ${token}` } : {} });
  if (!answer.ok) throw new Error(`${url}: ${answer.status} ${await answer.text()}`);
  return (await answer.json()) as Listed;
}

const recommendations = '/v1/recommendations?decided=no';

/** A cursor deep in the insurer’s recommendations, and the row on which it stands; empty when they fill one page. */
async function deepCursor(office: Office): Promise<{ cursor: string; due: string; id: string }> {
  const found = { cursor: '', due: '', id: '' };
  for (let page = 0; page < deepPages / 4; page++) {
    const at = found.cursor && `&cursor=${found.cursor}`;
    const { items, next } = await answerOf(
      `${office.ours}${recommendations}&limit=200${at}`,
      office.insurer.token,
    );
    const last = items.at(-1);
    // The last page is no page to measure: it may hold one row.
    if (!next || !last) break;
    Object.assign(found, { cursor: next, due: last.dueOn ?? '', id: last.id });
  }
  return found;
}

async function pathsOf(office: Office): Promise<Path[]> {
  const survey = officeId('survey', 2 * Math.floor(office.size / 4));
  const deep = await deepCursor(office);
  const staff = office.firm.surveyor.token;
  const insurer = office.insurer;
  return [
    {
      what: 'findings of a survey',
      ours: `/v1/surveys/${survey}/findings`,
      floor: `/findings/${survey}`,
      token: staff,
    },
    { what: 'the firm’s jobs', ours: '/v1/jobs?closed=no', floor: `/jobs/${office.firm.id}`, token: staff },
    {
      what: 'the insurer’s recommendations',
      ours: recommendations,
      floor: `/recommendations/${insurer.id}`,
      token: insurer.token,
    },
    ...(deep.cursor
      ? [
          {
            what: 'the same, deep',
            ours: `${recommendations}&cursor=${deep.cursor}`,
            floor: `/recommendations/${insurer.id}?due=${deep.due}&id=${deep.id}`,
            token: insurer.token,
          },
        ]
      : []),
    {
      what: 'search in the catalogue',
      ours: `/v1/catalogue?q=${encodeURIComponent(sought)}`,
      floor: `/catalogue/${office.firm.id}`,
      token: staff,
    },
  ];
}

/** Both must answer with the same rows, or the figures would say nothing. */
async function mustAgree(office: Office, path: Path): Promise<void> {
  const keyOf = (item: object) => ('id' in item ? item.id : 'key' in item ? item.key : null);
  const ours = await answerOf(office.ours + path.ours, path.token);
  const floor = await answerOf(office.floor + path.floor);
  const [a, b] = [ours.items.map(keyOf).join(), floor.items.map(keyOf).join()];
  if (a !== b || ours.items.length === 0) {
    throw new Error(
      `${path.what} (${office.size}): ours answers with other rows than the floor.\n${a}\n${b}`,
    );
  }
}

/** Reads over HTTP, against the same query written by hand behind a bare Fastify. */
export async function run(bench: Bench): Promise<void> {
  await withOffices(bench, async (offices) => {
    const { seconds, connections } = bench;
    const comparisons: Comparison[] = [];
    for (const office of offices) {
      for (const path of await pathsOf(office)) {
        await mustAgree(office, path);
        const headers = { authorization: `Bearer ${path.token}` };
        const ours = () => ask({ url: office.ours + path.ours, headers, connections, seconds });
        const floor = () => ask({ url: office.floor + path.floor, connections, seconds });
        // Plans are made and code is compiled before anything counts.
        await ask({ url: office.ours + path.ours, headers, connections, seconds: 1 });
        await ask({ url: office.floor + path.floor, connections, seconds: 1 });
        comparisons.push({
          what: path.what,
          size: office.size,
          unit: 'req/s',
          target,
          targetP99,
          ours,
          floor,
        });
      }
    }
    // The sizes of one path follow each other, so that they can be compared.
    comparisons.sort((a, b) => a.what.localeCompare(b.what));
    growth(bench, await bench.compare(comparisons));
  });
}

/** How much slower each path is in the largest office than in the smallest. */
function growth(bench: Bench, results: readonly Result[]): void {
  const [least, most] = [bench.sizes[0], bench.sizes.at(-1)];
  if (least === most) return;
  for (const small of results.filter((result) => result.size === least)) {
    const large = results.find((result) => result.what === small.what && result.size === most);
    if (!large) continue;
    const what = `${small.what}: times slower than at ${least}`;
    bench.figure({ what, size: most, unit: '×', values: [small.ours / large.ours], atMost: targetGrowth });
  }
}
