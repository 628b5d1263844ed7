import { type Logger, pino } from 'pino';
import type { LogLevel } from './environment-variables.ts';
import { logSerializers, netted } from './logged.ts';

export type { Logger } from 'pino';

const secretNames = ['authorization', 'cookie', 'set-cookie', 'password', 'token'];

/** Paths pino blanks out, at the top of a log line, one level down and in logged requests and responses. */
export const redactedPaths: string[] = secretNames.flatMap((name) => {
  const key = `["${name}"]`;
  return [key.slice(0), `*${key}`, `req.headers${key}`, `res.headers${key}`, `req.body${key}`];
});

/**
 * Opens the process's logger: one JSON object a line on standard output, without secrets or personal data
 * (see logged.ts).
 * @param name the process's name, shown on each line.
 */
export function openLogger(name: string, level: LogLevel): Logger {
  return pino({
    name,
    level,
    redact: { paths: redactedPaths, censor: '[hidden]' },
    timestamp: pino.stdTimeFunctions.isoTime,
    serializers: logSerializers,
    hooks: { streamWrite: netted },
  });
}
