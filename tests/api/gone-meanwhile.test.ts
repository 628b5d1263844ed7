import { buildFirm } from '@garboard/seed/builders';
import { Client } from 'pg';
import { expect, it, onTestFinished } from 'vitest';
import { startServer } from '../support/server.ts';

it('what somebody else removes while it is being worked on is told as gone, not as a fault of ours', async () => {
  const server = await startServer();
  onTestFinished(() => server.close());
  const firm = await buildFirm(server.db, ['surveyor']);
  const surveyor = server.as(firm.surveyor);
  const { id: vesselId } = (await surveyor.post('/v1/vessels').send({ name: 'Sedge Wren' }).expect(201)).body;
  const begun = { vesselId, purpose: 'condition', attendances: [] };
  const survey = (await surveyor.post('/v1/surveys').send(begun).expect(201)).body;
  const seen = { system: 'gas', title: 'Hose cracked', urgency: 'note', observed: 'Cracked.' };
  const finding = await surveyor
    .post(`/v1/surveys/${survey.id}/findings`)
    .send({ ...seen, recommendation: 'Renew.' })
    .expect(201);
  const connected = async () => {
    const client = new Client({ connectionString: server.databaseUrl });
    await client.connect();
    onTestFinished(() => client.end());
    return client;
  };
  const [other, watching] = [await connected(), await connected()];
  await other.query('BEGIN');
  await other.query('DELETE FROM findings WHERE id = $1', [finding.body.id]);
  // It finds the row, and waits for the other to make up their mind.
  const withdrawn = surveyor
    .post(`/v1/findings/${finding.body.id}/withdrawal`)
    .send({ reason: 'Seen by mistake.' })
    .then((answer) => answer);
  const waits = async () =>
    (
      await watching.query(
        "SELECT FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'",
      )
    ).rowCount;
  await expect.poll(waits, { timeout: 10_000 }).toBeGreaterThan(0);
  await other.query('COMMIT');
  const { status, body } = await withdrawn;
  expect(status).toBe(404);
  expect(body.detail).toMatch(/removed this in the meantime/);
});
