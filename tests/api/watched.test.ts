import { openMetrics } from '@garboard/platform/metrics';
import { openQueue, queueConnection } from '@garboard/platform/queue';
import { buildFirm, type Signed } from '@garboard/seed/builders';
import { measureQueues } from '@garboard/worker/measure';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let principal: Signed;
const metrics = openMetrics('api');
let draining = false;
beforeAll(async () => {
  server = await startServer({ metrics, draining: () => draining });
  principal = (await buildFirm(server.db, ['principal'])).principal;
});
afterAll(() => server.close());

test('requests are counted by the pattern of their route, without anybody’s data', async () => {
  const as = server.as(principal);
  await as.get('/v1/me').expect(200);
  await as.get('/v1/surveys/0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f').expect(404);
  await as.get('/nowhere/ysolde@example.org').expect(404);
  const text = await metrics.metrics();
  const counted = text.split('\n').filter((line) => line.startsWith('garboard_request_seconds_count'));
  expect(counted).toHaveLength(3);
  expect(counted.filter((line) => /method="GET",route="\/v1\/me",status="200"\} 1$/.test(line))).toHaveLength(
    1,
  );
  expect(counted.filter((line) => /route="\/v1\/surveys\/:id",status="404"\} 1$/.test(line))).toHaveLength(1);
  expect(text).not.toContain('0199f2a4');
  expect(text).not.toContain('ysolde');
});

test('what waits is looked up when asked for', async () => {
  const registry = openMetrics('worker');
  const queue = openQueue<unknown>(queueConnection({ databaseUrl: server.databaseUrl }), 'errands');
  await queue.add([{ id: '0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f', name: 'none', data: {} }]);
  const queues = { errands: queue };
  measureQueues(registry, { db: server.db, queues });
  const text = await registry.metrics();
  expect(text).toContain('garboard_queue_jobs{queue="errands",state="waiting",program="worker"} 1');
  expect(text).toMatch(/garboard_outbox_waiting\{program="worker"\} \d+/);
  await queue.close();
});

test('a process that was told to end is no longer ready, but answers', async () => {
  const anybody = server.as(null);
  expect((await anybody.get('/health/ready').expect(200)).body.status).toBe('ok');
  draining = true;
  expect((await anybody.get('/health/ready').expect(503)).body.status).toBe('ending');
  await anybody.get('/health/live').expect(200);
  await server.as(principal).get('/v1/me').expect(200);
});
