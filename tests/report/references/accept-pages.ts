// `npm run accept-pages [name…]`: prints the reference reports and takes their pages as they are for right. Look at
// them first: `git diff` shows which have changed.
import { mkdir, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { startPrinting } from '../printing.ts';
import { acceptedDir, acceptedFile, pageImages, writePage } from './page-images.ts';
import { references } from './reference-reports.ts';

const asked = process.argv.slice(2);
const names = asked.length > 0 ? asked : Object.keys(references);
const unknown = names.filter((name) => !(name in references));
if (unknown.length > 0) {
  console.error(
    `No reference is called ${unknown.join(', ')}; there are ${Object.keys(references).join(', ')}.`,
  );
  process.exit(1);
}
await mkdir(acceptedDir, { recursive: true });
const printing = await startPrinting();
try {
  for (const name of names) {
    const make = references[name];
    if (!make) continue;
    const { pdf } = await printing.printSnapshot(make());
    const pages = await pageImages(pdf);
    for (const file of await readdir(acceptedDir)) {
      if (file.replace(/-\d\d\.png$/, '') === name) await rm(join(acceptedDir, file));
    }
    for (const [index, page] of pages.entries()) await writePage(acceptedFile(name, index + 1), page);
    console.log(`${name}: ${pages.length} pages`);
  }
} finally {
  await printing.end();
}
