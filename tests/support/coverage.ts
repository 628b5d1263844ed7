import { systems } from '@garboard/trade/vocabulary';
import type { Caller } from './server.ts';

/** Says of every system that it was examined, so that nothing but the test's own matter stops the report. */
export async function answerAllCoverage(surveyor: Caller, surveyId: string): Promise<void> {
  const items = systems.map((system) => ({ system, reached: 'examined' }));
  await surveyor.put(`/v1/surveys/${surveyId}/coverage`).send({ items }).expect(200);
}
