import { mkdir, readdir, stat, utimes, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { PageTimeout } from '@garboard/worker/render/browser';
import { PrintError, removeLeftovers } from '@garboard/worker/render/print-report';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPdf, pageTexts, startPrinting } from './printing.ts';

let printing: Awaited<ReturnType<typeof startPrinting>>;
beforeAll(async () => {
  printing = await startPrinting();
  await printing.browser.version();
}, 30_000);
afterAll(() => printing.end());

/** A port that counts who knocks. */
async function listen() {
  let knocks = 0;
  const server = createServer((socket) => {
    knocks++;
    socket.destroy();
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('No port.');
  return { at: `http://127.0.0.1:${address.port}`, knocks: () => knocks, close: () => server.close() };
}

describe('what a page may reach', () => {
  it('is nothing but its own folder', async () => {
    const door = await listen();
    const secret = join(printing.folder, 'secret.svg');
    await writeFile(secret, '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>');
    const refused: string[] = [];
    const html = `<!doctype html><title>t</title>
      <link rel="preconnect" href="${door.at}"><link rel="prefetch" href="${door.at}/prefetch">
      <link rel="stylesheet" href="${door.at}/sheet">
      <style>@import url(${door.at}/import); @import url(file:///etc/hostname);
        p { background: url(${door.at}/background) }</style>
      <p>Only this.</p>
      <iframe src="file:///etc/passwd"></iframe><iframe src="${door.at}/frame"></iframe>
      <object data="file://${secret}"></object><embed src="${door.at}/embed">
      <video src="${door.at}/video" autoplay></video><svg><image href="${door.at}/image"/><image href="file://${secret}"/></svg>
      <iframe src="data:text/html,smuggled"></iframe>
      <script>document.write('written')</script>`;
    const printed = await printing.print({ html, onRefused: (url) => refused.push(url) });
    door.close();
    expect(door.knocks()).toBe(0);
    const text = (await pageTexts(await openPdf(printed.pdfPath))).join(' ');
    expect(text).toContain('Only this.');
    expect(text).not.toMatch(/root:|written|smuggled/);
    // Most is stopped by the content policy; other files, which it can't tell from ours, one by one.
    expect(refused).toContain('file:///etc/hostname');
    expect(refused).toContain(`file://${secret}`);
  });

  it('does not include another place the page sends itself to', async () => {
    const door = await listen();
    const html = `<!doctype html><meta http-equiv="refresh" content="0;url=${door.at}/away"><p>${'text '.repeat(20_000)}`;
    const outcome = await printing.print({ html }).then(
      () => 'printed',
      (error: unknown) => error,
    );
    door.close();
    expect(door.knocks()).toBe(0);
    if (outcome !== 'printed') expect(outcome).toBeInstanceOf(Error);
  });

  it('is not found through names that lead out of the folder', async () => {
    for (const name of ['../out.jpg', '/etc/passwd', '.hidden', 'report.html', 'report.pdf', '']) {
      const file = { name, path: '/etc/hostname' };
      await expect(printing.print({ html: '<p>x', files: [file] })).rejects.toThrow(PrintError);
    }
  });
});

describe('printing', () => {
  it('names the photo that is missing or broken', async () => {
    const good = join(printing.folder, 'good.jpg');
    await sharp({ create: { width: 20, height: 10, channels: 3, background: 'teal' } })
      .jpeg()
      .toFile(good);
    const broken = join(printing.folder, 'broken.jpg');
    await writeFile(broken, 'not a picture');
    const html =
      '<img src="good.jpg" alt="Photo 1.1"><img src="gone.jpg" alt="Photo 1.2"><img src="broken.jpg" alt="Photo 1.3">';
    const files = [
      { name: 'good.jpg', path: good },
      { name: 'broken.jpg', path: broken },
    ];
    await expect(printing.print({ html, files })).rejects.toThrow(
      'gone.jpg (Photo 1.2); broken.jpg (Photo 1.3)',
    );
    const lost = { name: 'lost.jpg', path: join(printing.folder, 'no-such.jpg') };
    await expect(printing.print({ html, files: [lost] })).rejects.toThrow('lost.jpg');
  });

  it('stops at its time limit, and the next report is printed', async () => {
    const html = `<table>${'<tr><td>cell<td>cell'.repeat(400_000)}</table>`;
    const started = Date.now();
    await expect(printing.print({ html, timeoutMs: 400 })).rejects.toThrow(PageTimeout);
    expect(Date.now() - started).toBeLessThan(12_000);
    expect((await printing.print({ html: '<p>next' })).pages).toBe(1);
  });

  it('starts Chromium again when it has crashed', async () => {
    const first = await printing.browser.pid();
    if (first === undefined) throw new Error('Chromium is not running.');
    const during = printing.print({ html: `<table>${'<tr><td>cell'.repeat(100_000)}</table>` });
    setTimeout(() => process.kill(first, 'SIGKILL'), 150);
    await expect(during).rejects.toThrow();
    expect((await printing.print({ html: '<p>again' })).pages).toBe(1);
    expect(await printing.browser.pid()).not.toBe(first);
  });

  it('tells how far it has come, counts pages and leaves only PDFs behind', async () => {
    const progress: number[] = [];
    const html = '<h1>One</h1><p style="break-before: page">Two';
    const printed = await printing.print({ html, onProgress: (percent) => progress.push(percent) });
    expect(progress).toEqual([...progress].sort((a, b) => a - b));
    expect(progress.at(-1)).toBe(100);
    expect(printed.pages).toBe(2);
    expect((await stat(printed.pdfPath)).size).toBe(printed.bytes);
    expect((await readdir(printing.workDir)).filter((name) => !name.endsWith('.pdf'))).toEqual([]);
  });

  it('prints several at once, each from its own folder', async () => {
    const texts = ['alpha', 'beta', 'gamma'];
    const printed = await Promise.all(texts.map((text) => printing.print({ html: `<p>${text}` })));
    const read = await Promise.all(
      printed.map(async ({ pdfPath }) => (await pageTexts(await openPdf(pdfPath))).join()),
    );
    expect(read.map((text) => text.trim())).toEqual(texts);
  });

  it('clears away what a killed worker left behind, and only that', async () => {
    const old = join(printing.workDir, 'print-killed');
    await mkdir(old, { recursive: true });
    await utimes(old, new Date('2026-01-01'), new Date('2026-01-01'));
    await mkdir(join(printing.workDir, 'print-recent'));
    await removeLeftovers(printing.workDir);
    const left = await readdir(printing.workDir);
    expect(left).toContain('print-recent');
    expect(left).not.toContain('print-killed');
    await removeLeftovers(join(printing.folder, 'never-made'));
  });
});
