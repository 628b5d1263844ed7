import type { Reached } from '../coverage.ts';
import type { System } from '../vocabulary.ts';
import { type BoatOutline, boatOutline, type HullKind, stem, stern, xAlong, yAt } from './boat-outline.ts';
import { fullWidth, muted } from './style.ts';
import { type Drawing, label, picture } from './svg.ts';

/** Where on board: fore and aft from the stem (0) to the stern (1); up from the keel (0) to the deck or masthead (1). */
export interface BoatPlace {
  along: number;
  height: number;
  side: 'port' | 'centre' | 'starboard';
}

/** A point of the drawing, in px of its viewBox. */
export type Point = readonly [x: number, y: number];

const aloftSystems: readonly System[] = ['rig-sails', 'navigation-lights', 'electronics'];

/** Whether the heights of a system's findings count up to the masthead or wheelhouse top rather than to the deck. */
export const isAloft = (system: System | ''): boolean => system !== '' && aloftSystems.includes(system);

/** Whether she is drawn with a rig: as the survey answers for it, else by what else it records of one. */
export function hullKindOf(
  coverage: readonly { system: System; reached: Reached | null }[],
  recorded: readonly { system: System | '' }[],
): HullKind {
  const answer = coverage.find(({ system }) => system === 'rig-sails')?.reached;
  const rigged = answer ? answer !== 'not-fitted' : recorded.some(({ system }) => system === 'rig-sails');
  return rigged ? 'sail' : 'power';
}

/** The ends of the heights at a place along the boat: y of 0 and y of 1. */
function heightsAt(boat: BoatOutline, along: number, aloft: boolean): Point {
  const low = yAt(boat.bottom, along);
  return [low, Math.min(yAt(aloft ? boat.top : boat.deck, along), low)];
}

/** Where on the drawing a place on board is. */
export function pointOf(boat: BoatOutline, place: Omit<BoatPlace, 'side'>, aloft: boolean): Point {
  const [low, high] = heightsAt(boat, place.along, aloft);
  return [xAlong(place.along), low + place.height * (high - low)];
}

/** The place on board nearest to a point of the drawing, to a hundredth; a point off the boat is drawn to her edge. */
export function placeAt(boat: BoatOutline, [x, y]: Point, aloft: boolean): Omit<BoatPlace, 'side'> {
  const along = toHundredth((stem - x) / (stem - stern));
  const [low, high] = heightsAt(boat, along, aloft);
  return { along, height: low === high ? 0 : toHundredth((low - y) / (low - high)) };
}

/** The same place, its height counted to the deck or higher as is asked; one above the deck comes down to it. */
export const samePlace = (boat: BoatOutline, place: BoatPlace, from: boolean, to: boolean): BoatPlace =>
  from === to ? place : { ...placeAt(boat, pointOf(boat, place, from), to), side: place.side };

const toHundredth = (share: number): number => Math.round(Math.min(1, Math.max(0, share)) * 100) / 100;

/** A place on board as people say it, such as `aft, low, to port`. */
export function placeInWords({ along, height, side }: BoatPlace): string {
  return `${alongInWords(along)}, ${heightInWords(height)}, ${side === 'centre' ? 'on the centreline' : `to ${side}`}`;
}

export const alongInWords = (along: number): string =>
  along < 1 / 3 ? 'forward' : along < 2 / 3 ? 'amidships' : 'aft';

export const heightInWords = (height: number): string =>
  height < 1 / 3 ? 'low' : height < 2 / 3 ? 'half way up' : 'high';

/** The words for which end is which, under a boat. */
export const endsNamed = (boat: BoatOutline): string[] => [
  label('Stern', { x: 40, y: boat.height - 8, fill: muted, 'text-anchor': 'middle' }),
  label('Bow', { x: 600, y: boat.height - 8, fill: muted, 'text-anchor': 'middle' }),
];

/** What a boat of a kind is seen as, in words. */
export const seenAs = (kind: HullKind): string =>
  `A ${kind === 'sail' ? 'sailing' : 'motor'} boat seen from starboard`;

/** A boat in profile with nothing marked on her. */
export function boatAlone(kind: HullKind): Drawing {
  const boat = boatOutline(kind);
  return picture(
    {
      ...{ key: 'boat', title: 'The boat' },
      description: `${seenAs(kind)}.`,
      width: fullWidth,
      height: boat.height,
    },
    ...boat.drawn,
    ...endsNamed(boat),
  );
}
