import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';

/**
 * Writes the least that could show the same: a page that fetches a survey's findings and lists them, and one with a grid
 * of photos among which keys and clicks move and choose. No framework, no styles but the grid's.
 */
export async function writePlainPages(folder: string, findings: string, thumbs: string[]): Promise<void> {
  await mkdir(folder);
  const write = async (name: string, text: string) => {
    await writeFile(join(folder, name), text);
    await writeFile(join(folder, `${name}.br`), brotliCompressSync(text));
  };
  await write('findings.json', findings);
  await write('index.html', '<!doctype html><title>Ready</title>');
  await write('findings.html', page('<ol id="list"></ol>', listFindings));
  for (const [n, path] of thumbs.entries()) await copyFile(path, join(folder, `${n}.jpg`));
  const cells = thumbs.map(
    (_, n) =>
      `<div role="row" tabindex="-1"><img src="/${n}.jpg" width="160" height="120" alt="" loading="lazy"></div>`,
  );
  await write('photos.html', page(`<div id="grid">${cells.join('')}</div>`, moveAmongPhotos));
}

const page = (body: string, script: string) =>
  `<!doctype html><html lang="en"><meta charset="utf-8"><title>Plain</title><style>
#grid{display:grid;grid-template-columns:repeat(auto-fill,160px);gap:10px}
[aria-selected=true]{outline:3px solid}</style><body>${body}<script type="module">${script}</script></body></html>`;

const listFindings = `
const { items } = await (await fetch('/findings.json')).json();
for (const { title } of items) {
  const item = document.createElement('li');
  item.textContent = title;
  document.getElementById('list').append(item);
}`;

const moveAmongPhotos = `
const grid = document.getElementById('grid');
const cells = [...grid.children];
const columns = () => getComputedStyle(grid).gridTemplateColumns.split(' ').length;
const choose = (cell) => cell.setAttribute('aria-selected', String(cell.getAttribute('aria-selected') !== 'true'));
grid.addEventListener('keydown', (event) => {
  const at = cells.indexOf(document.activeElement);
  const by = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: columns(), ArrowUp: -columns() }[event.key];
  if (by) cells[at + by]?.focus();
  if (event.key === ' ') choose(cells[at]);
  if (by || event.key === ' ') event.preventDefault();
});
grid.addEventListener('click', ({ target }) => choose(target.closest('[role=row]')));`;
