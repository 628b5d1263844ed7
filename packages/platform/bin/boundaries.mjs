// Checks who imports whom: `node packages/platform/bin/boundaries.mjs [root]`. Imports are found in the text, comments
// blanked, type-only ones included. Fails on a breach and when it sees no modules.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const root = resolve(process.argv[2] ?? join(here, '../../..'));

// What each package may import of ours, besides itself.
const below = {
  trade: [],
  platform: [],
  contract: ['trade', 'platform'],
  db: ['trade', 'platform', 'contract'],
  report: ['trade', 'platform', 'contract'],
  core: ['trade', 'platform', 'contract', 'db', 'report'],
  api: ['trade', 'platform', 'contract', 'db', 'report', 'core'],
  worker: ['trade', 'platform', 'contract', 'db', 'report', 'core'],
  portal: ['trade', 'contract'],
  seed: ['trade', 'platform', 'contract', 'db', 'report', 'core', 'api', 'worker'],
  tests: ['trade', 'platform', 'contract', 'db', 'report', 'core', 'api', 'worker', 'portal', 'seed'],
};

// Libraries that belong to a few packages; tests may use any.
const kept = [
  { library: /^(@prisma\/|prisma$|prisma\/)/, in: ['db', 'root'] },
  { library: /^bullmq(\/|$)/, in: ['platform', 'worker'] },
  { library: /^(@fastify\/|fastify$|fastify-)/, in: ['api'] },
];

const folders = { packages: 'packages', apps: 'apps', seed: 'seed', tests: 'tests' };
const leftOut = new Set(['node_modules', 'dist', 'generated', 'artefacts', 'data', '.git']);
const isSource = /\.(ts|tsx|mts|js|mjs|cjs|jsx)$/;

function* filesIn(folder) {
  if (!existsSync(folder)) return;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory() && !leftOut.has(entry.name)) yield* filesIn(path);
    else if (entry.isFile() && isSource.test(entry.name)) yield path;
  }
}

function packageOf(path) {
  const [first = '', second = ''] = relative(root, path).split(sep);
  if (first === 'packages' || first === 'apps') return second;
  return first === 'seed' || first === 'tests' ? first : 'root';
}

// Comments and template texts are blanked, so that code shown in them isn't taken for code. Quoted strings are kept:
// they are what names a module.
function withoutComments(text) {
  return text.replace(
    /('(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*")|\/\/[^\n]*|\/\*[\s\S]*?\*\//g,
    (whole, quoted) => quoted ?? whole.replace(/[^\n]/g, ' '),
  );
}

const withoutStrings = (text) =>
  text.replace(/'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"/g, (whole) => ' '.repeat(whole.length));

const importPattern =
  /(?:^|[;\n}])\s*(?:import|export)\s(?:[^'";]*?\sfrom\s*)?['"]([^'"\n]+)['"]|(?:\bimport|\brequire)\s*\(\s*['"]([^'"\n]+)['"]/g;

function* importsOf(text) {
  for (const match of text.matchAll(importPattern)) {
    const line = text.slice(0, match.index + match[0].length).split('\n').length;
    yield { specifier: match[1] ?? match[2], line };
  }
}

function complaintAbout(path, from, specifier) {
  if (specifier.startsWith('.')) {
    const to = packageOf(resolve(dirname(path), specifier));
    return to === from || from === 'root'
      ? undefined
      : `a relative path into ${to}: import @garboard/${to}/… instead`;
  }
  const ours = /^@garboard\/([^/]+)/.exec(specifier)?.[1];
  if (ours !== undefined) {
    if (from === 'root' || ours === from || below[from]?.includes(ours)) return undefined;
    return `${from} may not import ${ours}: imports go downward only`;
  }
  if (from === 'tests') return undefined;
  const rule = kept.find(({ library }) => library.test(specifier));
  if (!rule || rule.in.includes(from)) return undefined;
  return `${specifier} belongs to ${rule.in.filter((name) => name !== 'root').join(' and ')} only`;
}

const complaints = [];
let modules = 0;
const sources = [
  ...Object.values(folders).flatMap((folder) => [...filesIn(join(root, folder))]),
  ...(existsSync(root) ? readdirSync(root) : [])
    .filter((name) => isSource.test(name))
    .map((name) => join(root, name)),
];
for (const path of sources) {
  modules += 1;
  const from = packageOf(path);
  const text = withoutComments(readFileSync(path, 'utf8'));
  const where = relative(root, path);
  if (from !== 'root' && !(from in below)) {
    complaints.push(`${where}: the package ${from} has no place in the order: add it to boundaries.mjs`);
  }
  for (const { specifier, line } of importsOf(text)) {
    const complaint = complaintAbout(path, from, specifier);
    if (complaint) complaints.push(`${where}:${line}: ${complaint}`);
  }
  const environment = /\bprocess\s*\.\s*env\b/.exec(withoutStrings(text));
  // Tests hand it on to the programs they start.
  if (environment && !['platform', 'tests', 'root'].includes(from)) {
    const line = text.slice(0, environment.index).split('\n').length;
    complaints.push(`${where}:${line}: process.env is read in platform only: use readEnv()`);
  }
}

if (modules === 0) complaints.push(`No modules found in ${root}: is it the repository's root?`);
for (const complaint of complaints) console.error(complaint);
if (complaints.length > 0) process.exit(1);
console.log(`Imports in order: ${modules} modules.`);
