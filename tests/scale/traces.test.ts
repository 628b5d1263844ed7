import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { buffer } from 'node:stream/consumers';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { z } from 'zod';
import { signIn, writeSurvey } from '../jobs/survey-rows.ts';
import { type Installation, newInstallation, type Running } from '../support/installation.ts';

const value = z.object({ stringValue: z.string().optional(), intValue: z.coerce.string().optional() });
const attributes = z.array(z.object({ key: z.string(), value }));
const exported = z.object({
  resourceSpans: z.array(
    z.object({
      resource: z.object({ attributes }),
      scopeSpans: z.array(
        z.object({
          spans: z.array(
            z.object({
              traceId: z.string(),
              spanId: z.string(),
              parentSpanId: z.string().optional(),
              name: z.string(),
              kind: z.number(),
              attributes,
            }),
          ),
        }),
      ),
    }),
  ),
});

interface Span {
  service: string | undefined;
  traceId: string;
  spanId: string;
  parentSpanId?: string | undefined;
  name: string;
  attributes: Record<string, string | undefined>;
}

/** What stands for a collector: takes OTLP over HTTP, as JSON, and keeps the spans. */
let collector: Server;
const spans: Span[] = [];
const asked: (string | undefined)[] = [];

const plain = (list: z.output<typeof attributes>) =>
  Object.fromEntries(list.map(({ key, value: v }) => [key, v.stringValue ?? v.intValue]));

let installation: Installation;
let api: Running;
let worker: Running;
beforeAll(async () => {
  collector = createServer(async (request, response) => {
    asked.push(`${request.method} ${request.url}`);
    const sent = await buffer(request);
    const json = request.headers['content-encoding'] === 'gzip' ? gunzipSync(sent) : sent;
    for (const { resource, scopeSpans } of exported.parse(JSON.parse(json.toString())).resourceSpans) {
      const service = plain(resource.attributes)['service.name'];
      for (const span of scopeSpans.flatMap((scope) => scope.spans)) {
        spans.push({ ...span, service, attributes: plain(span.attributes) });
      }
    }
    response.writeHead(200, { 'content-type': 'application/json' }).end('{}');
  });
  await new Promise<void>((done) => collector.listen(0, '127.0.0.1', done));
  const { port } = collector.address() as AddressInfo;
  installation = await newInstallation({ OTEL_EXPORTER_OTLP_ENDPOINT: `http://127.0.0.1:${port}/` });
  [api, worker] = await Promise.all([installation.start('api'), installation.start('worker')]);
  await Promise.all([api.ready(), worker.ready()]);
}, 180_000);
afterAll(async () => {
  await installation?.close();
  await new Promise((done) => collector.close(done));
});

test('one trace from the request through the outbox to the job, and on to the jobs that this asks for', async () => {
  const { surveyId, personId } = await writeSurvey(installation.db, 2);
  const token = await signIn(installation.db, personId);
  const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/json' };
  const [traceId, parent] = ['4bf92f3577b34da6a3ce929d0e0e4736', '00f067aa0ba902b7'];
  const answer = await fetch(`${api.url}/v1/surveys/${surveyId}/reports?about=secret@person.example`, {
    method: 'POST',
    headers: { ...headers, traceparent: `00-${traceId}-${parent}-01` },
    body: JSON.stringify({ kind: 'full' }),
  });
  expect(answer.status).toBe(202);
  const ofTrace = () => spans.filter((span) => span.traceId === traceId);
  await vi.waitFor(
    () =>
      expect(ofTrace().map(({ name }) => name)).toEqual(
        expect.arrayContaining(['job report.render', 'print']),
      ),
    { timeout: 120_000, interval: 200 },
  );
  const named = (name: string) => ofTrace().find((span) => span.name === name);
  const request = named('POST /v1/surveys/:id/reports');
  expect(request).toMatchObject({ service: 'garboard-api', parentSpanId: parent });
  expect(request?.attributes).toMatchObject({
    'http.route': '/v1/surveys/:id/reports',
    'http.response.status_code': '202',
    'garboard.request_id': answer.headers.get('x-request-id'),
  });
  const job = named('job report.render');
  expect(job).toMatchObject({ service: 'garboard-worker', parentSpanId: request?.spanId });
  expect(named('print')).toMatchObject({ parentSpanId: job?.spanId });
  // Issuing tells people: those jobs belong to the same trace, below the job that caused them.
  await vi.waitFor(
    () =>
      expect(
        ofTrace()
          .filter((span) => span.name === 'job event.fan-out')
          .map((s) => s.parentSpanId),
      ).toContain(job?.spanId),
    { timeout: 60_000, interval: 200 },
  );
  expect(new Set(asked)).toEqual(new Set(['POST /v1/traces']));
  const everything = JSON.stringify(spans);
  for (const secret of ['person.example', token, 'Ines Quorn', 'tallowstrake.example']) {
    expect(everything).not.toContain(secret);
  }
}, 240_000);

test('a request without a trace begins its own, health checks make none, and what is left is sent at the end', async () => {
  const { length } = spans;
  await fetch(`${api.url}/health/live`);
  expect((await fetch(`${api.url}/v1/me`)).status).toBe(401);
  expect(await api.end('SIGTERM')).toBe(0);
  const later = spans.slice(length).filter(({ service }) => service === 'garboard-api');
  expect(later.map(({ name }) => name)).toEqual(['GET /v1/me']);
  expect(later[0]?.parentSpanId ?? '').toBe('');
  expect(later[0]?.attributes['http.response.status_code']).toBe('401');
}, 60_000);
