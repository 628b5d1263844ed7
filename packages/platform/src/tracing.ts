import {
  type Context,
  context,
  propagation,
  ROOT_CONTEXT,
  type Span,
  SpanKind,
  SpanStatusCode,
  trace,
} from '@opentelemetry/api';
import type { Logger } from './logger.ts';

const tracer = () => trace.getTracer('garboard');
let on = false;

/** Whether this process makes traces. */
export const tracingOn = (): boolean => on;

/**
 * Begins making OpenTelemetry traces and sending them to a collector. Without an endpoint nothing is loaded or made.
 * Spans carry route patterns, job names and ids; no addresses, names or words of errors.
 *
 * @param service `api` or `worker`; told as `garboard-<service>`
 * @param endpoint of OTLP over HTTP, without `/v1/traces`
 * @returns what sends the rest and ends it
 */
export async function startTracing(
  service: string,
  endpoint: string | undefined,
  log: Pick<Logger, 'warn'>,
): Promise<{ stop(): Promise<void> }> {
  if (!endpoint) return { stop: async () => undefined };
  const { sendTraces } = await import('./otlp-traces.ts');
  const sending = sendTraces(service, endpoint, log);
  on = true;
  return {
    async stop() {
      on = false;
      await sending.stop();
    },
  };
}

/** The span under way as W3C Trace Context writes it, to be handed on with work for later; null when there is none. */
export function currentTraceparent(): string | null {
  const span = on ? trace.getActiveSpan()?.spanContext() : undefined;
  if (!span) return null;
  return `00-${span.traceId}-${span.spanId}-${span.traceFlags.toString(16).padStart(2, '0')}`;
}

type Headers = Partial<Record<string, string | string[]>>;
type Facts = Record<string, string | number>;

/** What a span is called and says. */
export interface SpanFacts {
  name: string;
  facts?: Facts;
}

/** A request under way. */
export interface RequestSpan {
  /** Runs something, and whatever it begins, within the span. */
  within(work: () => void): void;
  end(status: number): void;
}

/** Begins the span of a request, as part of the trace that its `traceparent` names, if it has one. */
export function beginRequestSpan(headers: Headers, { name, facts }: SpanFacts): RequestSpan {
  const outer = propagation.extract(ROOT_CONTEXT, headers);
  const span = tracer().startSpan(name, { kind: SpanKind.SERVER, attributes: facts }, outer);
  const inner = trace.setSpan(outer, span);
  return {
    within: (work) => context.with(inner, work),
    end(status) {
      span.setAttribute('http.response.status_code', status);
      if (status >= 500) span.setStatus({ code: SpanStatusCode.ERROR });
      span.end();
    },
  };
}

/** Does a job within a span of its own, in the trace of whoever asked for it. */
export function withJobSpan<T>(
  traceparent: string | null,
  { name, facts }: SpanFacts,
  work: () => Promise<T>,
): Promise<T> {
  const outer = traceparent ? propagation.extract(ROOT_CONTEXT, { traceparent }) : ROOT_CONTEXT;
  const span = tracer().startSpan(name, { kind: SpanKind.CONSUMER, attributes: facts }, outer);
  return within(span, trace.setSpan(outer, span), work);
}

/** Does a longer piece of a request or job within a span of its own. Costs nothing when no traces are made. */
export function withSpan<T>(name: string, work: () => Promise<T>): Promise<T> {
  if (!on) return work();
  const span = tracer().startSpan(name);
  return within(span, trace.setSpan(context.active(), span), work);
}

async function within<T>(span: Span, inner: Context, work: () => Promise<T>): Promise<T> {
  try {
    return await context.with(inner, work);
  } catch (error) {
    // The words of an error may name people or files.
    span.setAttribute('error.type', error instanceof Error ? error.name : typeof error);
    span.setStatus({ code: SpanStatusCode.ERROR });
    throw error;
  } finally {
    span.end();
  }
}
