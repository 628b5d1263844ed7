// Runs one TypeScript file with a database at hand: node packages/platform/bin/run.mjs seed/load.ts [arguments]
import { prepareOrExit } from './prepare.mjs';
import { loadTypeScript } from './typescript.mjs';

const [file, ...args] = process.argv.slice(2);
if (!file) {
  console.error('Say which file to run: node packages/platform/bin/run.mjs <file.ts> [arguments]');
  process.exit(2);
}
await prepareOrExit({ portal: false });
const { runScript } = await loadTypeScript('../src/run-script.ts');
process.exit(await runScript(file, args));
