import { type ReportSnapshot, reportSnapshot } from '@garboard/contract/report-snapshot';
import { reportFonts } from '@garboard/report/fonts';
import { renderReport } from '@garboard/report/render-report';
import { describe, expect, it } from 'vitest';
import { sampleFinding, sampleReport } from './sample-snapshot.ts';

const fontUrls = Object.fromEntries(reportFonts.map(({ file }) => [file, file]));
const render = (snapshot: ReportSnapshot) =>
  renderReport(snapshot, { photoUrl: (id) => `${id}.jpg`, fontUrls });
const words = (html: string) => html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

const opinion = { low: 120_000, high: 180_050, currency: 'EUR', basis: 'opinion', note: '' } as const;
const quoted = { low: 41_500, high: 41_500, currency: 'EUR', basis: 'quotation', note: 'Of 4 May' } as const;
const findings = [
  sampleFinding(1, { urgency: 'before-use', cost: opinion }),
  sampleFinding(2, { urgency: 'before-use', cost: quoted }),
  sampleFinding(3, { urgency: 'next-layup', cost: { ...quoted, currency: 'JPY' } }),
  sampleFinding(4, { urgency: 'next-layup', cost: opinion, state: 'cleared' }),
  sampleFinding(5, { urgency: 'within-days', withinDays: 30 }),
];

describe('costs in a report', () => {
  it.each(['full', 'recommendations'] as const)('stand by their finding and in totals of a %s', (kind) => {
    const html = render({ ...sampleReport(0), kind, findings });
    const text = words(html);
    expect(text).toContain('Cost to put right: 1,200 to 1,800.50 EUR (surveyor’s opinion).');
    expect(text).toContain('Cost to put right: 415 EUR (yard’s quotation). Of 4 May');
    const table = words(html.slice(html.indexOf('id="costs"')));
    expect(table).toContain('1 finding that asks for work is not in these figures.');
    expect(table).toContain('Before next use 1 opinion, 1 quotation 1,615 to 2,215.50 EUR');
    expect(table).toContain('At the next haul-out or lay-up 1 quotation 41,500 JPY');
    expect(table).toContain('All together 1 opinion, 1 quotation 1,615 to 2,215.50 EUR');
    expect(table).toContain('not an offer');
  });

  it('are nowhere when no finding has one, as in every snapshot from before', () => {
    const snapshot = sampleReport(3);
    for (const finding of snapshot.findings) Reflect.deleteProperty(finding, 'cost');
    Reflect.deleteProperty(snapshot.survey, 'printCosts');
    const read = reportSnapshot.parse(snapshot);
    expect(read.survey.printCosts).toBe(false);
    expect(read.findings.map((f) => f.cost)).toEqual([null, null, null]);
    expect(render(read)).not.toMatch(/id="costs"|Cost to put right|may cost/);
  });
});
