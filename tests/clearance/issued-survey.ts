import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import type { PartyRole } from '@garboard/trade/vocabulary';
import { answerAllCoverage } from '../support/coverage.ts';
import { issueReport } from '../support/issue-report.ts';
import type { Caller, TestServer } from '../support/server.ts';

export interface IssuedSurvey {
  firmId: string;
  surveyId: string;
  surveyor: Caller;
  office: Caller;
  owner: Caller;
  insurer: Caller;
  /** A second person of the insurer's. */
  colleague: Caller;
  buyer: Caller;
  people: Record<'owner' | 'insurer' | 'colleague' | 'buyer', Signed>;
  findings: { id: string; items: string[] }[];
}

export const wordsOfFinding = {
  ...{ system: 'gas', title: 'Hose past its date', urgency: 'before-use' },
  ...{ observed: 'Dated 2009; the cover is cracked.', recommendation: 'Renew it.' },
};

/** A survey whose report is issued, with these findings beyond the usual words, and its parties. */
export async function issuedSurvey(
  server: TestServer,
  findings: readonly object[],
  decidedBy: 'insurer' | 'surveyor' = 'insurer',
): Promise<IssuedSurvey> {
  const firm = await buildFirm(server.db, ['surveyor', 'office']);
  const surveyor = server.as(firm.surveyor);
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const survey = await surveyor
    .post('/v1/surveys')
    .send({
      ...{ vesselId: vessel.body.id, purpose: 'insurance', clearanceDecidedBy: decidedBy },
      attendances: [{ date: '2026-05-04', place: 'Hard 3', condition: 'ashore' }],
    })
    .expect(201);
  const surveyId: string = survey.body.id;
  await answerAllCoverage(surveyor, surveyId);
  const made: IssuedSurvey['findings'] = [];
  for (const more of findings) {
    const finding = await surveyor
      .post(`/v1/surveys/${surveyId}/findings`)
      .send({ ...wordsOfFinding, ...more })
      .expect(201);
    const items = finding.body.items.map((item: { id: string }) => item.id);
    made.push({ id: finding.body.id, items });
  }
  await issueReport(server, firm.id, surveyor, surveyId);
  const join = async (role: PartyRole) => {
    const person = await buildPerson(server.db, { name: `The ${role}` });
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.party.create({
        data: {
          ...{ id: newId(), firmId: firm.id, surveyId, personId: person.id, role },
          ...{ name: person.name, released: true },
        },
      }),
    );
    return person;
  };
  const people = {
    owner: await join('owner'),
    insurer: await join('insurer'),
    colleague: await join('insurer'),
    buyer: await join('buyer'),
  };
  return {
    ...{ firmId: firm.id, surveyId, surveyor, office: server.as(firm.office), findings: made, people },
    ...{ owner: server.as(people.owner), insurer: server.as(people.insurer) },
    ...{ colleague: server.as(people.colleague), buyer: server.as(people.buyer) },
  };
}

/** Sends evidence; its parts beyond the usual words are written as the form has them. */
export function sendEvidence(caller: Caller, findingId: string, more: Record<string, unknown> = {}) {
  const request = caller.post(`/v1/findings/${findingId}/clearances`);
  const fields = {
    ...{ statement: 'Hose renewed.', workDoneBy: 'Fennel Slip Yard', workDoneOn: '2026-06-01' },
    ...more,
  };
  for (const [name, value] of Object.entries(fields)) {
    request.field(name, typeof value === 'object' ? JSON.stringify(value) : String(value));
  }
  return request;
}
