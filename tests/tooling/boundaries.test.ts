import { spawnSync } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { repositoryRoot } from '@garboard/platform/paths';
import { afterEach, beforeEach, expect, test } from 'vitest';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'garboard-boundaries-'));
});

afterEach(() => rm(folder, { recursive: true, force: true }));

async function check(files: Record<string, string>) {
  for (const [path, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
  return checkTree(folder);
}

function checkTree(root: string) {
  const program = join(repositoryRoot(), 'packages/platform/bin/boundaries.mjs');
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, root], { encoding: 'utf8' });
  return { status, said: stdout + stderr };
}

test('this repository keeps the order', () => {
  expect(checkTree(repositoryRoot())).toMatchObject({ status: 0 });
});

test('an empty tree fails', async () => {
  expect(await check({})).toMatchObject({ status: 1, said: expect.stringContaining('No modules found') });
});

test('downward imports pass', async () => {
  const text = "// import { x } from 'fastify';\nimport { y } from '@garboard/trade/states';\n";
  expect(await check({ 'packages/core/src/a.ts': text })).toMatchObject({ status: 0 });
});

test.each([
  [
    'an upward import',
    'packages/db/src/a.ts',
    "import { x } from '@garboard/core/a';",
    'may not import core',
  ],
  [
    'a type-only one',
    'packages/trade/src/a.ts',
    "import type { X } from '@garboard/db/a';",
    'may not import db',
  ],
  ['one over lines', 'apps/portal/src/a.tsx', "import {\n  x,\n} from '@garboard/core/a';", 'a.tsx:3'],
  ['a re-export', 'packages/db/src/a.ts', "export * from '@garboard/core/a';", 'may not import core'],
  ['a dynamic one', 'packages/db/src/a.ts', "const a = await import('@garboard/core/a');", 'import core'],
  [
    'a path across packages',
    'packages/core/src/a.ts',
    "import '../../db/src/b.ts';",
    'relative path into db',
  ],
  ['Prisma outside db', 'packages/core/src/a.ts', "import '@prisma/client';", 'belongs to db only'],
  ['BullMQ in core', 'packages/core/src/a.ts', "import { Queue } from 'bullmq';", 'platform and worker only'],
  ['Fastify in core', 'packages/core/src/a.ts', "import fastify from 'fastify';", 'belongs to api only'],
  ['the environment in core', 'packages/core/src/a.ts', 'export const port = process.env.PORT;', 'readEnv'],
  ['an unknown package', 'packages/odds/src/a.ts', 'export const a = 1;', 'no place in the order'],
])('%s fails', async (_what, path, text, complaint) => {
  expect(await check({ [path]: text })).toMatchObject({
    status: 1,
    said: expect.stringContaining(complaint),
  });
});
