import type { SnapshotPhoto } from '@garboard/contract/report-snapshot';
import { columnWidth, photoGap, photoRows } from '@garboard/report/photo-layout';
import { printEdges } from '@garboard/report/print-edges';
import { boatProfile, mostMarks, type PlacedFinding } from '@garboard/trade/drawing/boat-profile';
import { urgencies } from '@garboard/trade/vocabulary';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { referencePhoto } from './references/from-world.ts';
import { sampleReport } from './sample-snapshot.ts';

const photos = fc
  .array(fc.tuple(fc.integer({ min: 200, max: 6000 }), fc.integer({ min: 200, max: 6000 })), {
    minLength: 1,
    maxLength: 14,
  })
  .map((sizes) => sizes.map((size, n): SnapshotPhoto => referencePhoto(n, '', size)));

describe('photos in rows', () => {
  it('are all there, in order, uncropped, and those of a row share a height within the column', () => {
    fc.assert(
      fc.property(photos, (given) => {
        const rows = photoRows(given);
        expect(rows.flat().map(({ photo }) => photo.id)).toEqual(given.map(({ id }) => id));
        for (const row of rows) {
          expect(row.length).toBeLessThanOrEqual(3);
          expect(new Set(row.map(({ height }) => height)).size).toBe(1);
          const taken = row.reduce((sum, { width }) => sum + width, photoGap * (row.length - 1));
          expect(taken).toBeLessThanOrEqual(columnWidth + 1e-6);
          for (const { photo, width, height } of row) {
            expect(width / height).toBeCloseTo(photo.width / photo.height, 6);
            expect(height).toBeLessThan(100);
          }
        }
      }),
    );
  });

  it('stand two or three to a row, a panorama by itself as wide as the column', () => {
    const sizes = (rows: ReturnType<typeof photoRows>) => rows.map((row) => row.length);
    const lying = (count: number) =>
      Array.from({ length: count }, (_, n) => referencePhoto(n, '', [1200, 900]));
    expect([2, 3, 4, 5, 6, 7].map((count) => sizes(photoRows(lying(count))))).toEqual([
      [2],
      [3],
      [2, 2],
      [2, 3],
      [2, 2, 2],
      [2, 2, 3],
    ]);
    const [panorama] = photoRows([referencePhoto(1, '', [3000, 900])]).flat();
    expect(panorama?.width).toBeCloseTo(columnWidth, 6);
  });

  it('are printed at 200 to 300 dots to the inch where the camera gave as many', () => {
    const report = sampleReport(12, 3);
    const edges = printEdges(report);
    expect(edges.size).toBe(36);
    for (const finding of report.findings) {
      for (const { photo, width, height } of photoRows(finding.photos).flat()) {
        if (photo.id === report.leadPhoto?.id) continue;
        const dots = (edges.get(photo.id) ?? 0) / (Math.max(width, height) / 25.4);
        expect(dots).toBeGreaterThanOrEqual(200);
        expect(dots).toBeLessThanOrEqual(300);
      }
    }
  });
});

describe('the boat in profile', () => {
  const unit = fc.double({ min: 0, max: 1, noNaN: true });
  const placed = fc
    .array(
      fc.record({
        urgency: fc.constantFrom(...urgencies),
        aloft: fc.boolean(),
        position: fc.record({
          along: unit,
          height: unit,
          side: fc.constantFrom('port' as const, 'centre' as const, 'starboard' as const),
        }),
      }),
      { maxLength: 90 },
    )
    .map((list) => list.map((finding, n): PlacedFinding => ({ ...finding, number: n + 1 })));

  /** The middles of the numbers' rings. */
  const middles = (svg: string) =>
    [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="9"/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    );

  it.each(['sail', 'power'] as const)('has no number on another and none cut off: %s', (kind) => {
    fc.assert(
      fc.property(placed, (findings) => {
        const { svg, width, height } = boatProfile(kind, findings);
        const at = middles(svg);
        expect(at).toHaveLength(Math.min(findings.length, mostMarks));
        for (const [n, [x, y]] of at.entries()) {
          expect(Math.min(x, width - x, y, height - y)).toBeGreaterThanOrEqual(10);
          for (const [ox, oy] of at.slice(n + 1)) expect(Math.hypot(x - ox, y - oy)).toBeGreaterThan(19);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('leaves out the least urgent of too many, and tells places in words', () => {
    const position = { along: 0.5, height: 0.5, side: 'port' } as const;
    const many = Array.from({ length: mostMarks + 5 }, (_, n) => ({
      number: n + 1,
      urgency: n < 5 ? ('note' as const) : ('before-use' as const),
      aloft: false,
      position,
    }));
    const { description } = boatProfile('sail', many);
    expect(description).toContain('6 amidships, half way up, to port');
    expect(description).not.toMatch(/[^\d]1 amidships/);
  });
});
