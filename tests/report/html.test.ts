import { type ReportSnapshot, reportSnapshot } from '@garboard/contract/report-snapshot';
import { reportFonts } from '@garboard/report/fonts';
import { length, mass, shortened, writtenDay, writtenDayOf } from '@garboard/report/format';
import { renderReport } from '@garboard/report/render-report';
import { cssString } from '@garboard/report/styles/page-styles';
import { describe, expect, it } from 'vitest';
import { poisoned } from './hostile-text.ts';
import { sampleClearance, sampleFinding, sampleLetter, sampleReport } from './sample-snapshot.ts';

const fontUrls = Object.fromEntries(reportFonts.map(({ file }) => [file, file]));
const render = (snapshot: ReportSnapshot) =>
  renderReport(snapshot, { photoUrl: (id) => `${id}.jpg`, fontUrls });

/** What an escaped text could never have given: scripts, a second style element, handlers on any element. */
function foreignMarkup(html: string): string[] {
  const withoutValues = html.replace(/"[^"]*"/g, '""');
  const styles = [...withoutValues.matchAll(/<\/?style/gi)].slice(2).map(String);
  return [
    ...styles,
    ...[...withoutValues.matchAll(/<script|<[^>]*\son\w+=|<iframe|<object|<link/gi)].map(String),
  ];
}

const cleared = sampleFinding(3, {
  urgency: 'before-use',
  state: 'cleared',
  clearance: sampleClearance(),
});

describe('the HTML of a report', () => {
  it('is the same for the same snapshot', () => {
    expect(render(sampleReport(7, 3))).toBe(render(structuredClone(sampleReport(7, 3))));
  });

  it('accepts the samples as snapshots', () => {
    for (const snapshot of [sampleReport(3, 2), sampleLetter('status-letter', [cleared])]) {
      expect(reportSnapshot.parse(snapshot)).toEqual(snapshot);
    }
  });

  it.each(['full', 'recommendations'] as const)(
    'has no script and no element of a stranger in a %s report',
    (kind) => {
      const hostile = poisoned({ ...sampleReport(3, 2), kind });
      const html = render(hostile);
      expect(foreignMarkup(html)).toEqual([]);
      const images = hostile.findings
        .filter((f) => kind === 'full' || f.urgency !== 'note')
        .flatMap((f) => f.photos);
      expect(html.match(/<img /g)).toHaveLength(images.length + 1);
    },
  );

  it.each(['clearance-letter', 'status-letter'] as const)('escapes in a %s', (kind) => {
    const html = render(poisoned(sampleLetter(kind, [cleared, sampleFinding(4)])));
    expect(foreignMarkup(html)).toEqual([]);
    expect(html).not.toContain('<img');
    expect(html).toContain('&lt;script&gt;');
  });

  it('gives every photo a text and every heading cell a scope', () => {
    const snapshot = sampleReport(2, 2);
    const [first] = snapshot.findings;
    if (first?.photos[0]) first.photos[0].caption = '  ';
    const html = render(snapshot);
    expect(html).toContain('alt="Photo 1.1: no caption"');
    expect(html).toContain('alt="Photo 2.2: View 4 of the fitting"');
    expect(html).not.toMatch(/alt=""|<th(?![^>]*scope=)[ >]/);
  });

  it('keeps paragraphs and lines', () => {
    const snapshot = sampleReport(1);
    snapshot.survey.scope = 'First line\nsecond line\n\nSecond paragraph';
    expect(render(snapshot)).toContain(
      '<p class="prose" dir="auto">First line\nsecond line</p><p class="prose" dir="auto">Second paragraph</p>',
    );
  });

  it('leaves notes and withdrawn findings out of the work list', () => {
    const html = render({
      ...sampleReport(0),
      findings: [
        sampleFinding(1, { urgency: 'note', title: 'Only a note' }),
        sampleFinding(2, { urgency: 'before-use', title: 'No longer held', state: 'withdrawn' }),
        sampleFinding(3, { urgency: 'next-layup', title: 'Worn bearing' }),
        sampleFinding(4, { urgency: 'before-use', title: 'Open seam' }),
      ],
    });
    const work = html.slice(html.indexOf('id="work"'), html.indexOf('id="terms"'));
    expect(work).not.toContain('Only a note');
    expect(work).not.toContain('No longer held');
    expect(work.indexOf('Open seam')).toBeLessThan(work.indexOf('Worn bearing'));
  });

  it('needs the address of each font', () => {
    expect(() => renderReport(sampleReport(1), { photoUrl: String, fontUrls: {} })).toThrow(/font file/);
  });
});

describe('a letter', () => {
  it('names the evidence, the decision and who took it', () => {
    const html = render(sampleLetter('clearance-letter', [cleared]));
    expect(html).toContain('The one recommendation that required clearing has been cleared.');
    expect(html).toContain('Hose renewed, test sheet attached.');
    expect(html).toContain('Work done by Arlen Gas Fitters on 20 May 2026.');
    expect(html).toContain('<b>Cleared</b> by P. Vane (insurer) on 22 May 2026.');
    expect(html).not.toContain('Still open');
  });

  it('does not call all cleared what was accepted as found, nor what is open', () => {
    const asIs = { ...cleared, number: 5, id: sampleFinding(5).id, state: 'accepted-as-is' as const };
    expect(render(sampleLetter('clearance-letter', [cleared, asIs]))).toContain(
      'All 2 recommendations that required clearing have been decided. One of them was accepted as found',
    );
    const open = sampleFinding(6, { urgency: 'within-days', withinDays: 1, dueOn: '2026-05-06' });
    const html = render(sampleLetter('clearance-letter', [cleared, open]));
    expect(html).toContain('1 has been decided and 1 is still open');
    // Frozen at 00:30 on 7 May in Lisbon, though still 6 May in UTC.
    expect(html).toContain('Overdue since 6 May 2026');
  });
});

describe('figures and dates', () => {
  it('writes measures in metric with the customary unit', () => {
    expect(length(11.58)).toBe('11.58 m (38 ft 0 in)');
    expect(length(1.828)).toBe('1.83 m (6 ft 0 in)');
    expect(mass(7438)).toBe('7,438 kg (16,400 lb)');
    expect(mass(1_250_000)).toBe('1,250,000 kg (2,760,000 lb)');
  });

  it('writes days in words, in the time zone of the survey', () => {
    expect(writtenDay('2026-05-04')).toBe('4 May 2026');
    expect(writtenDayOf('2026-05-06T23:30:00Z', 'Europe/Lisbon')).toBe('7 May 2026');
    expect(writtenDayOf('2026-05-06T23:30:00Z', 'America/Lima')).toBe('6 May 2026');
  });

  it('shortens by characters, not halves of them', () => {
    expect(shortened('⚓⚓⚓', 2)).toBe('⚓…');
    expect(shortened('short', 60)).toBe('short');
  });

  it('lets nothing end a CSS string', () => {
    expect(cssString('a"b</style>')).toBe('"a\\22 b\\3c \\2f style\\3e "');
    expect(cssString('x\n\\')).toBe('"x\\a \\5c "');
  });
});
