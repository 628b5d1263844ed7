import { context, DiagLogLevel, diag, propagation, trace } from '@opentelemetry/api';
import { AsyncLocalStorageContextManager } from '@opentelemetry/context-async-hooks';
import { W3CTraceContextPropagator } from '@opentelemetry/core';
import { OTLPTraceExporter } from '@opentelemetry/exporter-trace-otlp-http';
import { resourceFromAttributes } from '@opentelemetry/resources';
import { BasicTracerProvider, BatchSpanProcessor } from '@opentelemetry/sdk-trace-base';
import type { Logger } from './logger.ts';

/** An ending process waits this long for the collector. */
const flushMs = 3_000;

/** Makes this process's tracer the one that sends to a collector; see `startTracing`, which loads this when needed. */
export function sendTraces(
  service: string,
  endpoint: string,
  log: Pick<Logger, 'warn'>,
): { stop(): Promise<void> } {
  const say = (words: string) => log.warn({ words }, 'traces');
  const quiet = () => undefined;
  diag.setLogger({ error: say, warn: quiet, info: quiet, debug: quiet, verbose: quiet }, DiagLogLevel.ERROR);
  const exporter = new OTLPTraceExporter({ url: `${endpoint}/v1/traces`, timeoutMillis: flushMs });
  const provider = new BasicTracerProvider({
    resource: resourceFromAttributes({ 'service.name': `garboard-${service}` }),
    spanProcessors: [new BatchSpanProcessor(exporter, { scheduledDelayMillis: 1_000 })],
  });
  context.setGlobalContextManager(new AsyncLocalStorageContextManager().enable());
  propagation.setGlobalPropagator(new W3CTraceContextPropagator());
  trace.setGlobalTracerProvider(provider);
  return {
    async stop() {
      await Promise.race([
        provider.shutdown().catch(() => undefined),
        new Promise((done) => setTimeout(done, flushMs).unref()),
      ]);
      for (const global of [trace, propagation, context, diag]) global.disable();
    },
  };
}
