export type LogLevel = (typeof logLevels)[number];
export const logLevels = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const;

/** One environment variable, for the README and for error messages. */
export interface EnvironmentVariable {
  name: string;
  default: string;
  /** What the value must be, completing "NAME must be …". */
  expects: string;
  meaning: string;
}

/** Every variable the service reads; there are no others. */
export const environmentVariables = [
  {
    name: 'PORT',
    default: '3000',
    expects: 'a whole number from 1 to 65535',
    meaning: 'Port the API and the portal listen on',
  },
  {
    name: 'HOST',
    default: '127.0.0.1',
    expects: 'an address or host name without a port',
    meaning: 'Address to listen on; 0.0.0.0 for all',
  },
  {
    name: 'DATA_DIR',
    default: './data',
    expects: 'the path of a folder',
    meaning: 'Folder of everything kept on disk',
  },
  {
    name: 'DATABASE_URL',
    default: '',
    expects: 'a postgres:// address',
    meaning: 'Existing PostgreSQL server; empty: one is run in DATA_DIR',
  },
  {
    name: 'DATABASE_DIRECT_URL',
    default: '',
    expects: 'a postgres:// address',
    meaning: 'The same database past the pooler, when DATABASE_URL is PgBouncer in transaction mode',
  },
  {
    name: 'REDIS_URL',
    default: '',
    expects: 'a redis:// or rediss:// address',
    meaning: 'Redis for the job queue; empty: the queue is kept in PostgreSQL',
  },
  {
    name: 'OBJECT_STORE_URL',
    default: 'file:$DATA_DIR/objects',
    expects: 'a file: address of a folder or an s3:// address of a bucket',
    meaning:
      'Where photos and documents are kept; s3://bucket/prefix?endpoint=…&region=…&pathStyle=1, credentials as for the AWS SDK',
  },
  {
    name: 'SMTP_URL',
    default: '',
    expects: 'an smtp:// or smtps:// address',
    meaning: 'Mail server; empty: mail is written as .eml files to $DATA_DIR/mail',
  },
  {
    name: 'PUBLIC_URL',
    default: 'http://HOST:PORT',
    expects: 'an http:// or https:// address',
    meaning: 'Address people reach the portal at; used in links',
  },
  {
    name: 'CHROMIUM_PATH',
    default: '',
    expects: 'the path of a Chromium program',
    meaning: 'Browser that prints reports; empty: one on PATH, else the bundled one',
  },
  {
    name: 'GARBOARD_SECRET',
    default: '',
    expects: 'at least 32 characters',
    meaning:
      'Encrypts signing keys, second factors and webhooks’ secrets; empty: the secret in $DATA_DIR/secret, made at first start',
  },
  {
    name: 'WEBHOOK_ALLOW_PRIVATE',
    default: '0',
    expects: '0 or 1',
    meaning: '1: webhooks may be sent to this machine and to private networks, and by http',
  },
  {
    name: 'GARBOARD_DEMO',
    default: '1',
    expects: '0 or 1',
    meaning: '0: start empty and print a one-time link for the first account',
  },
  {
    name: 'LOG_LEVEL',
    default: 'info',
    expects: `one of ${logLevels.join(', ')}`,
    meaning: 'How much is logged',
  },
  {
    name: 'METRICS_PORT',
    default: '',
    expects: 'a whole number from 1 to 65534',
    meaning: 'Port of figures for Prometheus, the worker’s is the next one; empty: none',
  },
  {
    name: 'DRAIN_SECONDS',
    default: '0',
    expects: 'a whole number from 0 to 60',
    meaning: 'How long an ending api process still answers, for balancers to notice',
  },
  {
    name: 'ORPHAN_AGE_HOURS',
    default: '24',
    expects: 'a whole number from 1 to 8760',
    meaning: 'From which age on files that nothing refers to are removed; looked for as often',
  },
  {
    name: 'TRUSTED_PROXIES',
    default: 'loopback',
    expects: 'addresses or networks separated by commas, such as 10.0.0.5, 10.1.0.0/16 or loopback',
    meaning: 'Proxies whose word is taken for where a request comes from',
  },
  {
    name: 'OTEL_EXPORTER_OTLP_ENDPOINT',
    default: '',
    expects: 'an http:// or https:// address',
    meaning: 'OpenTelemetry collector (OTLP over HTTP) that traces are sent to; empty: none are made',
  },
] as const satisfies readonly EnvironmentVariable[];
