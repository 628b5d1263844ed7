import { once } from 'node:events';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { readEnv } from '@garboard/platform/env';
import { ended, keepRunning, startProgram } from '@garboard/platform/kept-process';
import { openLogger, redactedPaths } from '@garboard/platform/logger';
import { readAnnouncement, readyText, warningText } from '@garboard/platform/start-messages';
import { pino } from 'pino';
import { expect, onTestFinished, test } from 'vitest';
import { testFolder } from './folders.ts';

const shutdownModule = new URL('../../packages/platform/src/shutdown.ts', import.meta.url).href;

async function program(code: string) {
  const folder = await testFolder();
  const file = join(folder, 'program.ts');
  await writeFile(join(folder, 'package.json'), '{"type": "module"}');
  await writeFile(file, `import { onShutdown } from '${shutdownModule}';\n${code}`);
  const lines: string[] = [];
  const around = {
    env: { PATH: '/usr/bin:/bin' },
    logFile: join(folder, 'logs/p.log'),
    onLine: (l: string) => lines.push(l),
  };
  return { file, lines, around };
}

const stopping = (work: string) =>
  `onShutdown({ info: (_, m) => console.log(m), error: (_, m) => console.log(m) }, async () => { ${work} }, 2000);
   setInterval(() => undefined, 1000);
   console.log('running');`;

test('told to stop, a program finishes what it is at and ends well', async () => {
  const { file, lines, around } = await program(stopping(`console.log('finishing');`));
  const child = await startProgram({ name: 'p', file }, around);
  await expect.poll(() => lines, { timeout: 10_000 }).toContain('running');
  child.kill('SIGTERM');
  expect(await ended(child)).toBe(0);
  expect(lines).toEqual(['running', 'stopping', 'finishing']);
  expect(await readFile(around.logFile, 'utf8')).toBe('running\nstopping\nfinishing\n');
});

test('a program whose stopping hangs is ended', async () => {
  const { file, lines, around } = await program(stopping('await new Promise(() => undefined);'));
  const child = await startProgram({ name: 'p', file }, around);
  await expect.poll(() => lines, { timeout: 10_000 }).toContain('running');
  child.kill('SIGTERM');
  expect(await ended(child)).toBe(1);
  expect(lines).toContain('stopping took too long');
});

test('a program stops when the one that started it is gone', async () => {
  const { file, lines, around } = await program(stopping(`console.log('finishing');`));
  const child = await startProgram({ name: 'p', file }, around);
  await expect.poll(() => lines, { timeout: 10_000 }).toContain('running');
  // The channel closes, as it does when we die.
  const exit = once(child, 'exit');
  child.disconnect();
  expect(await exit).toEqual([0, null]);
  await expect.poll(() => lines).toContain('finishing');
});

test('a kept program is started again when it ends, ever later, until it is stopped', async () => {
  const { file, lines, around } = await program(`console.log('started'); process.exit(7);`);
  const ends: [number, number][] = [];
  const kept = keepRunning({ name: 'p', file }, around, (code, restartInMs) =>
    ends.push([code, restartInMs]),
  );
  onTestFinished(() => kept.stop(1_000));
  await expect.poll(() => ends.length, { timeout: 20_000 }).toBeGreaterThanOrEqual(2);
  await kept.stop(1_000);
  expect(ends.slice(0, 2)).toEqual([
    [7, 500],
    [7, 1000],
  ]);
  const { length } = lines;
  await new Promise((resolve) => setTimeout(resolve, 1_500));
  expect(lines).toHaveLength(length);
});

test('secrets do not reach the log', () => {
  const written: string[] = [];
  const log = pino(
    { redact: { paths: redactedPaths, censor: '[hidden]' } },
    { write: (line) => void written.push(line) },
  );
  log.info({
    password: 's3cret',
    person: { token: 's3cret' },
    req: { headers: { authorization: 's3cret', cookie: 's3cret' } },
  });
  expect(written.join()).not.toContain('s3cret');
  expect(openLogger('x', 'silent').level).toBe('silent');
});

test('the terminal shows errors, not every log line', () => {
  expect(warningText('api', '{"level":30,"msg":"request"}')).toBeUndefined();
  expect(warningText('api', '{"level":50,"msg":"failed","err":{"message":"disk full"}}')).toBe(
    'api: failed: disk full',
  );
  expect(warningText('api', 'SyntaxError: x')).toBe('api: SyntaxError: x');
});

test('announcements are told from log lines', () => {
  expect(readAnnouncement('{"level":30,"msg":"x"}')).toBeUndefined();
  expect(readAnnouncement('{"step":"migrated","applied":["a","b"]}')?.text).toBe(
    'Database brought up to date (2 migrations)',
  );
  expect(readAnnouncement('{"step":"first-account","link":"http://x/y"}')).toMatchObject({
    link: 'http://x/y',
  });
  expect(readAnnouncement('not json')).toBeUndefined();
});

test('the last message tells where to go and who may sign in', async () => {
  const dataDir = await testFolder();
  const people = [
    { role: 'surveyor', name: 'Ana', email: 'ana@firm.example', password: 'pw-one' },
    { role: 'surveyor', name: 'Bo', email: 'bo@other.example', password: 'pw-two', firm: 2 },
  ];
  await writeFile(join(dataDir, 'demo-sign-ins.json'), JSON.stringify(people));
  const env = readEnv({ DATA_DIR: dataDir, PORT: '3456' });
  const from = { env, seconds: 3.21, logFolder: '/logs' };
  const text = await readyText({ ...from, announcements: [] });
  expect(text).toContain('http://127.0.0.1:3456/docs');
  expect(text).toMatch(/surveyor \(firm 2\) {2}Bo {4}bo@other.example {2}pw-two/);
  const first = await readyText({
    ...from,
    announcements: [{ step: 'first-account', link: 'http://x/welcome' }],
  });
  expect(first).toContain('http://x/welcome');
  expect(first).not.toContain('pw-one');
});
