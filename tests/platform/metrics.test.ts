import { Counter, openMetrics, serveMetrics } from '@garboard/platform/metrics';
import { expect, onTestFinished, test } from 'vitest';

test('figures are served to whoever reaches the port, and nothing else is', async () => {
  const registry = openMetrics('tried');
  new Counter({ name: 'boats_total', help: 'Boats', registers: [registry] }).inc(3);
  const served = await serveMetrics(registry, { port: 0, host: '127.0.0.1' });
  onTestFinished(() => served.close());
  const answer = await fetch(`http://127.0.0.1:${served.port}/metrics`);
  expect(answer.headers.get('content-type')).toMatch(/^text\/plain; version=0\.0\.4/);
  const text = await answer.text();
  expect(text).toContain('boats_total{program="tried"} 3');
  expect(text).toContain('process_cpu_seconds_total');
  expect((await fetch(`http://127.0.0.1:${served.port}/`)).status).toBe(404);
  expect((await fetch(`http://127.0.0.1:${served.port}/metrics`, { method: 'POST' })).status).toBe(404);
  await expect(serveMetrics(registry, { port: served.port, host: '127.0.0.1' })).rejects.toThrow(
    'EADDRINUSE',
  );
});
