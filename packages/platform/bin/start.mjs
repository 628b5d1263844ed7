// `npm start` and, with --watch, `npm run dev`: prepares the repository, then runs the whole service.
import { prepareOrExit } from './prepare.mjs';
import { loadTypeScript } from './typescript.mjs';

await prepareOrExit();
const { supervise } = await loadTypeScript('../src/supervisor.ts');
await supervise({ watch: process.argv.includes('--watch') });
