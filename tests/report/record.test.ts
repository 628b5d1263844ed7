import { type ReportSnapshot, reportSnapshot } from '@garboard/contract/report-snapshot';
import { reportFonts } from '@garboard/report/fonts';
import { renderReport } from '@garboard/report/render-report';
import { reaches, reachLabels } from '@garboard/trade/coverage';
import { systemLabels, systems } from '@garboard/trade/vocabulary';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPdf, pageTexts, startPrinting } from './printing.ts';
import { sampleEquipment, sampleReport } from './sample-snapshot.ts';

const fontUrls = Object.fromEntries(reportFonts.map(({ file }) => [file, file]));
const render = (snapshot: ReportSnapshot) =>
  renderReport(snapshot, { photoUrl: (id) => `${id}.jpg`, fontUrls });
const plain = (html: string) =>
  html
    .replace(/<style>.*?<\/style>/s, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');

const report = () => ({
  ...sampleReport(3),
  coverage: systems.map((system, i) => {
    const reached = reaches[i % 4] ?? 'examined';
    const needs = reached === 'partly' || reached === 'not-reached';
    return {
      system,
      reached,
      reason: needs ? `Behind the lining at ${i}.` : '',
      lookedFrom: i % 3 === 0 ? `from the cockpit, place ${i}` : '',
    };
  }),
  inventory: sampleEquipment(),
});

let printing: Awaited<ReturnType<typeof startPrinting>>;
beforeAll(async () => {
  printing = await startPrinting();
}, 30_000);
afterAll(() => printing.end());

describe('the scope achieved', () => {
  it('says of each system how far it was reached, why and from where', () => {
    const snapshot = report();
    const { coverage, inventory } = snapshot;
    expect(reportSnapshot.parse(snapshot)).toMatchObject({ coverage, inventory });
    const text = plain(render(snapshot));
    expect(text).toContain(
      'Of 25 systems: 7 were examined, 6 in part, 6 were not reached and 6 are not fitted.',
    );
    const unseen = snapshot.coverage
      .filter((c) => c.reached === 'not-reached')
      .map((c) => systemLabels[c.system]);
    expect(text.replace('&amp;', '&')).toContain(`Not reached: ${unseen.join('; ')}. `);
    for (const item of snapshot.coverage) {
      const row = `${systemLabels[item.system]} ${reachLabels[item.reached]}`;
      const why = item.reason ? ` ${item.reason}` : '';
      const from = item.lookedFrom ? ` Looked at from: ${item.lookedFrom}` : '';
      expect(text).toContain(`${row}${why}${from}`);
    }
  });

  it('is left out of reports made before it was asked for, which stay readable', () => {
    const { coverage: _, inventory: __, ...older } = report();
    const parsed = reportSnapshot.parse(older);
    expect(parsed).toMatchObject({ coverage: [], inventory: [] });
    const text = plain(render(parsed));
    expect(text).not.toContain('What was reached');
    expect(text).not.toContain('Equipment on board');
  });
});

describe('the equipment', () => {
  it('says in words what had expired on the day of the report', () => {
    const text = plain(render(report()));
    // The report was frozen at half past midnight of 7 May in Lisbon.
    expect(text).toContain('Expired by 7 May 2026: Red hand flares; Gas hose.');
    expect(text).toContain('Expired on 6 May 2026');
    // Its last day is the day of the report.
    expect(text).not.toContain('Expired on 7 May 2026');
    expect(text).toContain('1 March 2010 16 years old');
    expect(text).toContain('DX-0041');
  });

  it('says that nothing had expired, and says nothing of what bears no date', () => {
    const [raft] = sampleEquipment();
    if (!raft) throw new Error('no raft');
    const fine = { ...report(), inventory: [{ ...raft, expiresOn: '2026-05-07' }] };
    expect(plain(render(fine))).toContain('1 entry, 1 with a last day marked. None had passed its last day');
    const undated = { ...report(), inventory: [{ ...raft, expiresOn: null, madeOn: null }] };
    expect(plain(render(undated))).not.toContain('None had passed');
  });

  it('stands in the PDF with its heading in the contents, and no text is cut off', async () => {
    const printed = await printing.printSnapshot(report());
    const pages = await pageTexts(await openPdf(printed.pdfPath));
    const all = pages.join(' ');
    for (const item of report().inventory) expect(all).toContain(item.serialNumber ?? item.name);
    for (const system of systems) expect(all).toContain(systemLabels[system]);
    const outline = JSON.stringify(await printed.pdf.getOutline());
    expect(outline).toContain('What was reached');
    expect(outline).toContain('Equipment on board');
  });
});
