// `npm run check`: types, lint and format, package boundaries; one line each, and what is wrong in full.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { prepareOrExit, root } from './prepare.mjs';

const checks = [
  { name: 'types', args: ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.json'] },
  { name: 'lint and format', args: ['node_modules/@biomejs/biome/bin/biome', 'check', '--colors=off'] },
  { name: 'package boundaries', args: ['packages/platform/bin/boundaries.mjs'] },
];

await prepareOrExit({ portal: false });
const results = await Promise.all(checks.map(check));
for (const { name, ok, seconds, said } of results) {
  console.log(`${ok ? 'ok    ' : 'FAILED'}  ${name} (${seconds} s)`);
  if (!ok) console.log(`${said.trim()}\n`);
}
process.exit(results.every(({ ok }) => ok) ? 0 : 1);

function check({ name, args: [program, ...args] }) {
  const start = performance.now();
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(root, program), ...args], { cwd: root });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => (said += chunk));
    child.on('close', (code) => {
      resolve({ name, ok: code === 0, seconds: ((performance.now() - start) / 1000).toFixed(1), said });
    });
  });
}
