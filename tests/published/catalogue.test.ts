import { catalogue } from '@garboard/trade/catalogue/catalogue';
import { diagrams } from '@garboard/trade/catalogue/diagrams';
import { slots, slotsOf } from '@garboard/trade/catalogue/slots';
import { systems } from '@garboard/trade/vocabulary';
import { worksheets } from '@garboard/trade/worksheets/registry';
import { describe, expect, it } from 'vitest';

const keys = new Set(catalogue.map((entry) => entry.key));
const kinds = new Set(worksheets.map((worksheet) => worksheet.kind));
// What can burn, shock or fall: nobody tests it uncautioned.
const dangerous = ['gas', 'fuel', 'ac-electrical', 'rig-sails', 'fire-safety'];

describe('the catalogue', () => {
  it('has at least 100 entries with unique keys, over every system that can have defects', () => {
    expect(catalogue.length).toBeGreaterThanOrEqual(100);
    expect(keys.size).toBe(catalogue.length);
    const covered = new Set(catalogue.map((entry) => entry.system));
    expect(systems.filter((system) => !covered.has(system))).toEqual([]);
  });

  it('has at least 30 entries with a diagram, and no diagram without an entry', () => {
    const drawn = catalogue.filter((entry) => entry.diagram);
    expect(drawn.length).toBeGreaterThanOrEqual(30);
    const used = new Set(drawn.map((entry) => entry.diagram));
    expect(Object.keys(diagrams).filter((key) => !used.has(key))).toEqual([]);
  });
});

describe.each(catalogue.map((entry) => [entry.key, entry] as const))('%s', (_key, entry) => {
  it('names only worksheets, entries and diagrams that exist', () => {
    expect(entry.worksheets.filter((kind) => !kinds.has(kind))).toEqual([]);
    expect(entry.related.filter((key) => !keys.has(key) || key === entry.key)).toEqual([]);
    if (entry.diagram) expect(Object.keys(diagrams)).toContain(entry.diagram);
  });

  it('has every text, and only slots that are asked for', () => {
    expect(entry.key).toMatch(/^[a-z0-9]+(-[a-z0-9]+)+$/);
    expect(entry.title.length).toBeLessThanOrEqual(80);
    for (const text of [
      entry.title,
      entry.lookFor,
      entry.observed,
      entry.consequence,
      entry.recommendation,
    ]) {
      expect(text.trim()).toBe(text);
      expect(text.length).toBeGreaterThan(8);
    }
    for (const text of [entry.lookFor, entry.observed, entry.consequence, entry.recommendation]) {
      expect(text).toMatch(/[.!?]$/);
    }
    expect(slotsOf(entry.observed).filter((slot) => !(slot in slots))).toEqual([]);
    for (const text of [entry.title, entry.lookFor, entry.consequence]) expect(slotsOf(text)).toEqual([]);
  });

  it('has an urgency that fits its days, and cautions where testing can hurt', () => {
    expect(entry.withinDays !== undefined).toBe(entry.urgency === 'within-days');
    if (dangerous.includes(entry.system)) expect(entry.cautions.length).toBeGreaterThan(0);
  });
});

describe.each(Object.entries(diagrams))('diagram %s', (key, drawing) => {
  it('is keyed by its name and says what it shows', () => {
    expect(drawing.key).toBe(key);
    expect(drawing.description.length).toBeGreaterThan(40);
    expect(drawing.svg).not.toMatch(/NaN|undefined/);
  });

  it('keeps its words at a size that can be read at 80 mm', () => {
    const sizes = [...drawing.svg.matchAll(/font-size="([\d.]+)"/g)].map((match) => Number(match[1]));
    expect(drawing.width).toBe(320);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(10);
  });
});
