import type { SurveyImportRecord } from '@garboard/contract/imports';
import { openLogger } from '@garboard/platform/logger';
import { buildFirm } from '@garboard/seed/builders';
import { importSurveyJob } from '@garboard/worker/jobs/import-survey';
import { expect } from 'vitest';
import type { Caller, TestServer } from '../support/server.ts';

/** A surveyor's desk: a firm, a survey, and the steps of bringing something in. */
export async function openDesk(server: TestServer) {
  const firm = await buildFirm(server.db, ['principal', 'surveyor', 'office']);
  const surveyor = server.as(firm.surveyor);
  const surveyId = await newSurvey(surveyor);
  const deps = {
    db: server.db,
    store: server.store,
    log: openLogger('test', 'fatal'),
    clock: () => new Date(),
  };
  const desk = {
    ...{ firm, surveyor, surveyId },
    /** Looks at files; the answer's body. */
    async look(files: Record<string, Buffer | string>, status = 201, survey = surveyId) {
      let request = surveyor.post(`/v1/surveys/${survey}/imports`);
      for (const [name, bytes] of Object.entries(files))
        request = request.attach('file', Buffer.from(bytes), name);
      const answer = await request;
      expect(answer.body, JSON.stringify(answer.body)).toBeTruthy();
      expect({ status: answer.status, body: answer.status === status ? null : answer.body }).toEqual({
        status,
        body: null,
      });
      return answer.body;
    },
    /** Begins it and does the worker's part at once. */
    async bring(id: string, choices: object = {}): Promise<SurveyImportRecord> {
      await surveyor.post(`/v1/imports/${id}/start`).send(choices).expect(202);
      await importSurveyJob(deps, { firmId: firm.id, importId: id }, { lastAttempt: true }).catch(
        () => undefined,
      );
      return (await surveyor.get(`/v1/imports/${id}`).expect(200)).body;
    },
    async findings(survey = surveyId) {
      return (await surveyor.get(`/v1/surveys/${survey}/findings?limit=200`).expect(200)).body.items;
    },
    newSurvey: () => newSurvey(surveyor),
    deps,
  };
  return desk;
}

async function newSurvey(surveyor: Caller): Promise<string> {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Sedge' }).expect(201);
  const body = { vesselId: vessel.body.id, purpose: 'insurance' };
  return (await surveyor.post('/v1/surveys').send(body).expect(201)).body.id;
}
