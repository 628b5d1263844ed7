import { draftOf, showField } from '@garboard/portal/pages/findings/findingDraft';
import { world } from '@garboard/seed/world/index';
import { boatOutline, yAt } from '@garboard/trade/drawing/boat-outline';
import {
  type BoatPlace,
  boatAlone,
  hullKindOf,
  isAloft,
  placeAt,
  placeInWords,
  pointOf,
  samePlace,
} from '@garboard/trade/drawing/boat-places';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const hundredths = fc.integer({ min: 0, max: 100 }).map((n) => n / 100);

describe.each(['sail', 'power'] as const)('a place on a boat drawn for %s', (kind) => {
  const boat = boatOutline(kind);

  it('comes back from the point at which it is drawn', () => {
    fc.assert(
      fc.property(hundredths, hundredths, fc.boolean(), (along, height, aloft) => {
        const point = pointOf(boat, { along, height }, aloft);
        const back = placeAt(boat, point, aloft);
        expect(back.along).toBe(along);
        // At the very stem keel and deck meet: every height is the same point there.
        const [low, high] = [0, 1].map((end) => pointOf(boat, { along, height: end }, aloft)[1]);
        if (low !== high) expect(back.height).toBe(height);
      }),
    );
  });

  it('is the nearest one for a point off her, and never off the scale', () => {
    const anywhere = fc.double({ min: -2000, max: 2000, noNaN: true });
    fc.assert(
      fc.property(anywhere, anywhere, fc.boolean(), (x, y, aloft) => {
        const { along, height } = placeAt(boat, [x, y], aloft);
        for (const share of [along, height]) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1);
        }
      }),
    );
    expect(placeAt(boat, [700, 0], true)).toEqual({ along: 0, height: expect.any(Number) });
    expect(placeAt(boat, [325, 1000], false)).toEqual({ along: 0.5, height: 0 });
    expect(placeAt(boat, [325, 0], false)).toEqual({ along: 0.5, height: 1 });
  });

  it('stays where it is when its height is counted otherwise', () => {
    const place = { along: 0.5, height: 1, side: 'port' } as const;
    const deck = yAt(boat.deck, 0.5);
    const counted = samePlace(boat, place, false, true);
    expect(counted.height).toBeLessThan(0.7);
    expect(counted.side).toBe('port');
    expect(Math.abs(pointOf(boat, counted, true)[1] - deck)).toBeLessThan(2);
    expect(samePlace(boat, counted, true, false).height).toBeGreaterThan(0.97);
    expect(samePlace(boat, place, true, false)).toEqual(place);
    expect(samePlace(boat, place, true, true)).toBe(place);
  });

  it('is drawn bow to the right, keel down, and to the deck unless it may be aloft', () => {
    expect(pointOf(boat, { along: 0, height: 0 }, false)[0]).toBe(560);
    expect(pointOf(boat, { along: 1, height: 0 }, false)[0]).toBe(90);
    expect(pointOf(boat, { along: 0.5, height: 1 }, false)[1]).toBe(yAt(boat.deck, 0.5));
    const masthead = pointOf(boat, { along: 0.42, height: 1 }, true)[1];
    expect(masthead).toBeLessThan(yAt(boat.deck, 0.42) - 80);
    expect(boatAlone(kind).description).toContain(kind === 'sail' ? 'sailing' : 'motor');
  });
});

it('is of a boat with a rig as the survey answers for it, else as it records one', () => {
  const rig = [{ system: 'rig-sails' as const }];
  const answered = (reached: 'not-reached' | 'not-fitted' | null) => [
    { system: 'rig-sails' as const, reached },
  ];
  expect(hullKindOf(answered('not-fitted'), rig)).toBe('power');
  expect(hullKindOf(answered('not-reached'), [])).toBe('sail');
  expect(hullKindOf(answered(null), [])).toBe('power');
  expect(hullKindOf(answered(null), rig)).toBe('sail');
  expect(hullKindOf([], [{ system: '' }, { system: 'hull' }])).toBe('power');
  expect(isAloft('rig-sails') && !isAloft('hull') && !isAloft('')).toBe(true);
});

it('is told in words, in the editor too', () => {
  const position: BoatPlace = { along: 0.9, height: 0.1, side: 'port' };
  expect(placeInWords(position)).toBe('aft, low, to port');
  expect(showField('position', { ...draftOf(null), position }, () => 0)).toBe('aft, low, to port');
  expect(showField('position', draftOf(null), () => 0)).toBe('');
});

it('is known for the findings of the demonstration, no two of a survey at the same', () => {
  for (const survey of world.surveys) {
    const places = survey.findings.map(({ position: p }) => `${p.along} ${p.height} ${p.side}`);
    expect(new Set(places).size).toBe(survey.findings.length);
    for (const { position } of survey.findings) {
      for (const share of [position.along, position.height]) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
    }
  }
});
