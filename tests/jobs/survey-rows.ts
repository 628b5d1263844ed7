import type { Ctx } from '@garboard/core/context';
import { hashToken, newToken } from '@garboard/core/people/tokens';
import { type Database, inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { ObjectStore } from '@garboard/platform/object-store';
import { buildSigningKey } from '@garboard/seed/builders';
import { type FirmRole, systems } from '@garboard/trade/vocabulary';

/** The address that documents of these tests are verified at. */
export const publicUrl = 'https://survey.example';

/** A firm with one surveyor and a survey in drafting, with so many findings; the ids of all of it. */
export interface SurveyRows {
  firmId: string;
  personId: string;
  surveyId: string;
  findingIds: string[];
}

export async function writeSurvey(db: Database, findings: number): Promise<SurveyRows> {
  const [firmId, personId] = [newId(), newId()];
  await inTransaction(db, [firmId], async (tx) => {
    await tx.firm.create({ data: { id: firmId, name: 'Tallow & Strake', addressLines: ['3 Slip Lane'] } });
    await buildSigningKey(tx, firmId);
    await tx.person.create({
      data: { id: personId, email: `${personId}@tallowstrake.example`, name: 'Ines Quorn' },
    });
    await tx.firmMember.create({
      data: { id: newId(), firmId, personId, role: 'surveyor', qualifications: 'Surveyor of small craft' },
    });
  });
  return addSurvey(db, { firmId, personId }, { findings, number: '2026-0042' });
}

/** A survey in drafting, with so many findings, of a firm and a surveyor that are there. */
export async function addSurvey(
  db: Database,
  { firmId, personId }: Pick<SurveyRows, 'firmId' | 'personId'>,
  { findings, number }: { findings: number; number: string },
): Promise<SurveyRows> {
  const [vesselId, surveyId] = [newId(), newId()];
  const findingIds = Array.from({ length: findings }, () => newId());
  await inTransaction(db, [firmId], async (tx) => {
    await tx.vessel.create({ data: { id: vesselId, firmId, name: 'Grey Wagtail' } });
    await tx.survey.create({
      data: {
        id: surveyId,
        firmId,
        vesselId,
        number,
        purpose: 'insurance',
        state: 'drafting',
        timeZone: 'Pacific/Auckland',
        surveyorId: personId,
        findingCount: findings,
        attendances: {
          create: {
            id: newId(),
            firmId,
            ordinal: 1,
            date: new Date('2026-05-04'),
            place: 'Arlen',
            condition: 'ashore',
          },
        },
      },
    });
    await tx.finding.createMany({
      data: findingIds.map((id, index) => ({
        id,
        firmId,
        surveyId,
        number: index + 1,
        system: 'gas',
        title: `Hardened hose ${index + 1}`,
        observed: 'The cover is cracked over 40 mm.',
        recommendation: 'Replace the hose.',
        urgency: index % 2 === 0 ? 'within-days' : 'note',
        withinDays: index % 2 === 0 ? 30 : null,
        harms: ['fire-explosion'],
        references: [],
        position: { along: 0.5, height: 0.5, side: 'port' },
      })),
    });
    await tx.coverageAnswer.createMany({
      data: systems.map((system) => ({ firmId, surveyId, system, reached: 'examined' })),
    });
  });
  return { firmId, personId, surveyId, findingIds };
}

export interface Acting {
  db: Database;
  store: ObjectStore;
  clock: () => Date;
}

/** Runs a use case as the survey's surveyor, or as a colleague in another role. */
export async function asStaff<T>(
  { db, store, clock }: Acting,
  { firmId, personId }: Pick<SurveyRows, 'firmId' | 'personId'>,
  work: (ctx: Ctx) => Promise<T>,
  role: FirmRole = 'surveyor',
): Promise<T> {
  const actor = {
    kind: 'person' as const,
    personId,
    name: 'Ines Quorn',
    email: 'ines@tallowstrake.example',
    memberships: [{ firmId, role }],
    firmIds: [firmId],
  };
  return inTransaction(db, [firmId], (tx) => work({ actor, tx, store, clock, log: console }));
}

/** Runs a use case as the worker does. */
export async function asWorker<T>(
  { db, store, clock }: Acting,
  firmId: string,
  work: (ctx: Ctx) => Promise<T>,
): Promise<T> {
  const actor = { kind: 'system' as const, firmIds: [firmId] };
  return inTransaction(db, [firmId], (tx) => work({ actor, tx, store, clock, log: console }));
}

/** A session of a person who is there. @returns its token */
export async function signIn(db: Database, personId: string): Promise<string> {
  const token = newToken();
  const expiresAt = new Date(Date.now() + 6 * 3_600_000);
  await inTransaction(db, [], (tx) =>
    tx.session.create({ data: { id: newId(), personId, tokenHash: hashToken(token), expiresAt } }),
  );
  return token;
}
