import { isAbsolute, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { z } from 'zod';
import { environmentVariables, type LogLevel, logLevels } from './environment-variables.ts';
import { isNetwork } from './networks.ts';
import { readSecretFiles } from './secret-files.ts';

/** What the environment says, read once and checked. Paths are absolute, addresses end without a slash. */
export interface Env {
  port: number;
  host: string;
  dataDir: string;
  databaseUrl?: string;
  redisUrl?: string;
  /** A `file:` URL of the folder that holds photos and documents, or an `s3:` URL of a bucket. */
  objectStoreUrl: string;
  smtpUrl?: string;
  publicUrl: string;
  chromiumPath?: string;
  /** Encrypts signing keys, second factors and webhooks' secrets; a file in DATA_DIR when not set. */
  secret?: string;
  /** Whether webhooks may go to private addresses and by http. */
  webhookAllowPrivate: boolean;
  /** True unless GARBOARD_DEMO=0: load the demonstration into an empty database. */
  demo: boolean;
  logLevel: LogLevel;
  /** Port of `GET /metrics`; the worker's is the next one. */
  metricsPort?: number;
  /** How long an api process goes on answering, no longer ready, after it was told to end. */
  drainSeconds: number;
  /** From which age on the worker removes files of the object store that no row names. */
  orphanAgeHours: number;
  /** The database past a pooler such as PgBouncer: for migrations and the queue. When set, `databaseUrl` is a pooler. */
  databaseDirectUrl?: string;
  /** Where OpenTelemetry traces are sent, without `/v1/traces`; none are made when not set. */
  otlpEndpoint?: string;
  /** Addresses and networks of proxies whose `X-Forwarded-…` is believed, separated by commas. */
  trustedProxies: string;
}

type VariableName = (typeof environmentVariables)[number]['name'];

const url = (...schemes: string[]) =>
  z.string().refine((value) => URL.canParse(value) && schemes.includes(new URL(value).protocol.slice(0, -1)));

// The record's type makes a variable that is listed but not read, or read but not listed, a type error.
const schema = z.object({
  PORT: z
    .string()
    .regex(/^\d{1,5}$/)
    .transform(Number)
    .pipe(z.number().min(1).max(65535))
    .default(3000),
  HOST: z
    .string()
    .regex(/^[^\s/]+$/)
    .default('127.0.0.1'),
  DATA_DIR: z.string().default('./data'),
  DATABASE_URL: url('postgres', 'postgresql').optional(),
  DATABASE_DIRECT_URL: url('postgres', 'postgresql').optional(),
  REDIS_URL: url('redis', 'rediss').optional(),
  OBJECT_STORE_URL: z
    .string()
    .regex(/^(file:|s3:\/\/[a-z0-9])/)
    .optional(),
  SMTP_URL: url('smtp', 'smtps').optional(),
  PUBLIC_URL: url('http', 'https').optional(),
  CHROMIUM_PATH: z.string().optional(),
  GARBOARD_SECRET: z.string().min(32).optional(),
  WEBHOOK_ALLOW_PRIVATE: z.enum(['0', '1']).default('0'),
  GARBOARD_DEMO: z.enum(['0', '1']).default('1'),
  LOG_LEVEL: z.enum(logLevels).default('info'),
  METRICS_PORT: z
    .string()
    .regex(/^\d{1,5}$/)
    .transform(Number)
    .pipe(z.number().min(1).max(65534))
    .optional(),
  DRAIN_SECONDS: z
    .string()
    .regex(/^\d{1,2}$/)
    .transform(Number)
    .pipe(z.number().max(60))
    .default(0),
  ORPHAN_AGE_HOURS: z
    .string()
    .regex(/^\d{1,4}$/)
    .transform(Number)
    .pipe(z.number().min(1).max(8760))
    .default(24),
  TRUSTED_PROXIES: z
    .string()
    .refine((value) => value.split(',').every(isNetwork))
    .default('loopback'),
  OTEL_EXPORTER_OTLP_ENDPOINT: url('http', 'https').optional(),
} satisfies Record<VariableName, z.ZodType>);

/** A variable has a value that can't be used; the message names each and says what it must be. */
export class EnvError extends Error {
  override name = 'EnvError';
}

/**
 * Reads and checks the environment; the only place that does. An empty value counts as not set; secrets may stand in
 * files (`secret-files.ts`).
 *
 * @throws EnvError naming each variable that is wrong.
 */
export function readEnv(source: NodeJS.ProcessEnv = process.env): Env {
  const kept = readSecretFiles(source);
  if (kept.complaints.length > 0) throw new EnvError(kept.complaints.join('\n'));
  const given = Object.fromEntries(
    environmentVariables.flatMap(({ name }) => {
      const value = source[name]?.trim() || kept.values[name];
      return value ? [[name, value]] : [];
    }),
  );
  const parsed = schema.safeParse(given);
  if (!parsed.success) {
    const names = [...new Set(parsed.error.issues.map((issue) => String(issue.path[0])))];
    throw new EnvError(names.map((name) => complaint(name, given[name])).join('\n'));
  }
  const value = parsed.data;
  const dataDir = resolve(value.DATA_DIR);
  return {
    port: value.PORT,
    host: value.HOST,
    dataDir,
    databaseUrl: value.DATABASE_URL,
    redisUrl: value.REDIS_URL,
    objectStoreUrl: objectStoreUrl(value.OBJECT_STORE_URL, dataDir),
    smtpUrl: value.SMTP_URL,
    publicUrl: (value.PUBLIC_URL ?? localUrl(value.HOST, value.PORT)).replace(/\/+$/, ''),
    chromiumPath: value.CHROMIUM_PATH && resolve(value.CHROMIUM_PATH),
    secret: value.GARBOARD_SECRET,
    webhookAllowPrivate: value.WEBHOOK_ALLOW_PRIVATE === '1',
    demo: value.GARBOARD_DEMO !== '0',
    logLevel: value.LOG_LEVEL,
    metricsPort: value.METRICS_PORT,
    drainSeconds: value.DRAIN_SECONDS,
    databaseDirectUrl: value.DATABASE_DIRECT_URL,
    otlpEndpoint: value.OTEL_EXPORTER_OTLP_ENDPOINT?.replace(/\/+$/, ''),
    orphanAgeHours: value.ORPHAN_AGE_HOURS,
    trustedProxies: value.TRUSTED_PROXIES,
  };
}

/**
 * The database's own address, past any pooler, for a process that can't start one itself.
 * @throws EnvError when DATABASE_URL isn't set.
 */
export function requiredDatabaseUrl(env: Env): string {
  if (env.databaseUrl) return env.databaseDirectUrl ?? env.databaseUrl;
  throw new EnvError('DATABASE_URL is not set: use `npm start`, which runs a database, or set it.');
}

/** The database's address for serving, and whether it is a pooler's. @throws EnvError when DATABASE_URL isn't set. */
export function servingDatabase(env: Env): { url: string; pooled: boolean } {
  const direct = requiredDatabaseUrl(env);
  return { url: env.databaseUrl ?? direct, pooled: env.databaseDirectUrl !== undefined };
}

function complaint(name: string, value: string | undefined): string {
  const expects = environmentVariables.find((variable) => variable.name === name)?.expects;
  // Addresses may carry a password, so they aren't repeated.
  const shown = name.endsWith('_URL') || name === 'GARBOARD_SECRET' ? '' : ` but is "${value}"`;
  return `${name} must be ${expects}${shown}.`;
}

function objectStoreUrl(given: string | undefined, dataDir: string): string {
  if (given === undefined) return pathToFileURL(join(dataDir, 'objects')).href;
  if (given.startsWith('s3:')) return given;
  const path = given.slice('file:'.length);
  return isAbsolute(path) ? new URL(given).href : pathToFileURL(resolve(path)).href;
}

function localUrl(host: string, port: number): string {
  if (host === '0.0.0.0' || host === '::') return `http://localhost:${port}`;
  return `http://${host.includes(':') ? `[${host}]` : host}:${port}`;
}
