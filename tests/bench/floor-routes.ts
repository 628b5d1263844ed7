import { serialiserFor } from '@garboard/api/http/serialise';
import { catalogueListed } from '@garboard/contract/catalogue';
import { page } from '@garboard/contract/common';
import { finding } from '@garboard/contract/findings';
import { jobPage } from '@garboard/contract/job-list';
import { recommendationPage } from '@garboard/contract/recommendations';
import Fastify, { type FastifyInstance } from 'fastify';
import { Pool } from 'pg';
import { z } from 'zod';
import { findingsOfSurvey, jobsOfFirm, recommendationsOf, searchInCatalogue } from './floor-reads.ts';
import {
  insertDecision,
  insertEvidence,
  insertFinding,
  type NewDecision,
  type NewEvidence,
  type NewFinding,
} from './floor-writes.ts';

/** What the floor answers; ids and cursors come in the address, as ours have them. */
export const floorPaths = {
  findings: '/findings/:survey',
  jobs: '/jobs/:firm',
  recommendations: '/recommendations/:person',
  catalogue: '/catalogue/:firm',
} as const;

type Query = Record<string, string>;

/** @param url of the database’s owner, whom no policy binds */
export function createFloor(url: string): FastifyInstance {
  const pool = new Pool({ connectionString: url, max: 12, options: '-c jit=off' });
  const app = Fastify();
  const serve = (
    path: string,
    schema: z.ZodType,
    answer: (params: Query, query: Query) => Promise<unknown>,
  ) => {
    const write = serialiserFor(schema);
    app.get(path, async (request, reply) => {
      const answered = await answer(request.params as Query, request.query as Query);
      return reply.type('application/json').send(write(answered));
    });
  };
  serve(floorPaths.findings, page(finding), ({ survey = '' }) => findingsOfSurvey(pool, survey));
  serve(floorPaths.jobs, jobPage, ({ firm = '' }) => jobsOfFirm(pool, firm));
  serve(floorPaths.recommendations, recommendationPage, ({ person = '' }, { due = '', id = '' }) =>
    recommendationsOf(pool, person, { due, id }),
  );
  serve(
    floorPaths.catalogue,
    z.object({ items: z.array(catalogueListed), next: z.string().nullable() }),
    ({ firm = '' }) => searchInCatalogue(pool, firm),
  );
  const take = <T>(path: string, write: (row: T) => Promise<void>) => {
    app.post(path, async (request, reply) => {
      await write(request.body as T);
      return reply.code(201).send();
    });
  };
  take<NewFinding>('/findings', (row) => insertFinding(pool, row));
  take<NewEvidence>('/evidence', (row) => insertEvidence(pool, row));
  take<NewDecision>('/decisions', (row) => insertDecision(pool, row));
  app.addHook('onClose', () => pool.end());
  return app;
}
