import { resolve } from 'node:path';
import { readEnv, requiredDatabaseUrl } from '@garboard/platform/env';
import { environmentVariables } from '@garboard/platform/environment-variables';
import { expect, test } from 'vitest';

test('an empty environment gives the defaults', () => {
  expect(readEnv({})).toMatchObject({
    port: 3000,
    host: '127.0.0.1',
    dataDir: resolve('data'),
    objectStoreUrl: `file://${resolve('data/objects')}`,
    publicUrl: 'http://127.0.0.1:3000',
    demo: true,
    logLevel: 'info',
  });
});

test('values are read, made absolute and freed of trailing slashes', () => {
  const env = readEnv({
    PORT: '8080',
    HOST: '0.0.0.0',
    DATA_DIR: 'some/where',
    DATABASE_URL: 'postgresql://u:p@db:5432/x',
    REDIS_URL: 'redis://cache:6379',
    PUBLIC_URL: 'https://survey.example/',
    GARBOARD_DEMO: '0',
  });
  expect(env).toMatchObject({
    port: 8080,
    dataDir: resolve('some/where'),
    databaseUrl: 'postgresql://u:p@db:5432/x',
    redisUrl: 'redis://cache:6379',
    publicUrl: 'https://survey.example',
    demo: false,
  });
});

test('an empty value counts as not set', () => {
  expect(readEnv({ SMTP_URL: '', PORT: ' ' })).toMatchObject({ smtpUrl: undefined, port: 3000 });
});

test.each([
  ['::1', 'http://[::1]:3000'],
  ['0.0.0.0', 'http://localhost:3000'],
])('listening on %s, links lead to %s', (host, expected) => {
  expect(readEnv({ HOST: host }).publicUrl).toBe(expected);
});

test.each([
  ['PORT', '70000', 'PORT must be a whole number from 1 to 65535 but is "70000".'],
  ['PORT', 'http', 'PORT must be a whole number from 1 to 65535 but is "http".'],
  ['HOST', 'http://x', 'HOST must be an address or host name without a port but is "http://x".'],
  ['GARBOARD_DEMO', 'yes', 'GARBOARD_DEMO must be 0 or 1 but is "yes".'],
  [
    'LOG_LEVEL',
    'loud',
    'LOG_LEVEL must be one of fatal, error, warn, info, debug, trace, silent but is "loud".',
  ],
  [
    'OBJECT_STORE_URL',
    's3:///prefix',
    'OBJECT_STORE_URL must be a file: address of a folder or an s3:// address',
  ],
  [
    'OBJECT_STORE_URL',
    'ftp://host',
    'OBJECT_STORE_URL must be a file: address of a folder or an s3:// address',
  ],
])('%s=%s is refused by name', (name, value, message) => {
  expect(() => readEnv({ [name]: value })).toThrow(message);
});

test('an address with a password is not repeated in the message', () => {
  expect(() => readEnv({ DATABASE_URL: 'mysql://u:geheim@db/x' })).toThrow(
    /^DATABASE_URL must be a postgres:\/\/ address\.$/,
  );
});

test('several bad values are all named', () => {
  expect(() => readEnv({ PORT: '-1', REDIS_URL: 'nowhere' })).toThrow(/PORT.*\nREDIS_URL/);
});

test('a process that needs a database says so', () => {
  expect(() => requiredDatabaseUrl(readEnv({}))).toThrow('DATABASE_URL is not set');
});

test('every variable is described', () => {
  for (const variable of environmentVariables) {
    expect(variable.name).toMatch(/^[A-Z_]+$/);
    expect(variable.meaning).not.toBe('');
    expect(variable.expects).not.toBe('');
  }
});
