import { type System, type Urgency, urgencies } from '../vocabulary.ts';
import { type BoatOutline, boatOutline, type HullKind } from './boat-outline.ts';
import {
  type BoatPlace,
  endsNamed,
  isAloft,
  type Point,
  placeInWords,
  pointOf,
  seenAs,
} from './boat-places.ts';
import { fine, fullWidth, ink, muted, outline, paper, signal } from './style.ts';
import { type Drawing, el, label, picture } from './svg.ts';

/** A finding and where it is on board. */
export interface PlacedFinding {
  number: number;
  urgency: Urgency;
  position: BoatPlace;
  /** Whether its height counts up to the masthead or wheelhouse top rather than to the deck. */
  aloft: boolean;
}

interface Mark extends PlacedFinding {
  /** Where it is, and where its number stands. */
  place: Point;
  at: Point;
}

/** More numbers than this would hide the boat; the most urgent are shown. */
export const mostMarks = 60;

const radius = 9;
const apart = 2 * radius + 3;

interface Recorded {
  number: number;
  urgency: Urgency;
  system: System;
  state: string;
  position: BoatPlace | null;
}

/** The findings of which the place on board is known; a withdrawn one is of no place. */
export function placedFindings(findings: readonly Recorded[]): PlacedFinding[] {
  return findings.flatMap(({ number, urgency, position, system, state }) =>
    position && state !== 'withdrawn' ? [{ number, urgency, position, aloft: isAloft(system) }] : [],
  );
}

/**
 * A boat in profile, seen from starboard, with each finding's number where it is. Numbers that would lie on one
 * another are moved aside and tied to their place by a line; the most urgent stay nearest.
 */
export function boatProfile(kind: HullKind, findings: readonly PlacedFinding[]): Drawing {
  const boat = boatOutline(kind);
  const marks = spread(shownFirst(findings), boat);
  const inOrder = [...marks].sort((a, b) => a.number - b.number);
  return picture(
    {
      key: 'profile',
      title: 'Where the findings are',
      description: `${seenAs(kind)}. ${inOrder.map(inWords).join('; ')}.`,
      width: fullWidth,
      height: boat.height,
    },
    ...boat.drawn,
    ...marks.filter(isMoved).map(tie),
    ...marks.map(sign),
    ...endsNamed(boat),
  );
}

function shownFirst(findings: readonly PlacedFinding[]): PlacedFinding[] {
  const rank = ({ urgency }: PlacedFinding) => urgencies.indexOf(urgency);
  return [...findings].sort((a, b) => rank(a) - rank(b) || a.number - b.number).slice(0, mostMarks);
}

/** Gives each mark the free spot nearest its place, ring by ring outwards. */
function spread(findings: readonly PlacedFinding[], boat: BoatOutline): Mark[] {
  const taken: Point[] = [];
  return findings.map((finding) => {
    const place = pointOf(boat, finding.position, finding.aloft);
    const at = freeSpot(place, taken, boat.height);
    taken.push(at);
    return { ...finding, place, at };
  });
}

function freeSpot([x, y]: Point, taken: readonly Point[], height: number): Point {
  const free = ([px, py]: Point) => taken.every(([tx, ty]) => Math.hypot(px - tx, py - ty) >= apart);
  const inside = ([px, py]: Point): Point => [
    Math.min(fullWidth - radius - 5, Math.max(radius + 5, px)),
    Math.min(height - radius - 5, Math.max(radius + 5, py)),
  ];
  for (let ring = 0; ring < 60; ring++) {
    const spots = ring === 0 ? 1 : 6 + 4 * ring;
    for (let spot = 0; spot < spots; spot++) {
      // Above first: what lies below the waterline has less room.
      const angle = -Math.PI / 2 + ((spot % 2 === 0 ? spot : -spot - 1) * Math.PI) / spots;
      const point = inside([x + ring * 8 * Math.cos(angle), y + ring * 8 * Math.sin(angle)]);
      if (free(point)) return point;
    }
  }
  throw new Error('No room is left on the profile for another number.');
}

const isMoved = ({ place, at }: Mark): boolean => Math.hypot(place[0] - at[0], place[1] - at[1]) > radius;

function tie({ place, at }: Mark): string {
  return (
    el('path', { d: `M${place[0]} ${place[1]} L${at[0]} ${at[1]}`, stroke: ink, 'stroke-width': fine }) +
    el('circle', { cx: place[0], cy: place[1], r: 1.8, fill: ink })
  );
}

// Told apart without colour: filled, filled darker or empty, and the words beside the drawing.
function sign({ number, urgency, position, at }: Mark): string {
  const fill = urgency === 'before-use' ? signal : urgency === 'within-days' ? ink : paper;
  const filled = fill !== paper;
  const ring = urgency === 'note' ? muted : filled ? fill : ink;
  const [cx, cy] = at;
  return [
    el('circle', { cx, cy, r: radius, fill, stroke: ring, 'stroke-width': outline }),
    position.side === 'port'
      ? el('circle', {
          cx,
          cy,
          r: radius + 2.6,
          stroke: ring,
          'stroke-width': 1,
          'stroke-dasharray': '2.5 2',
        })
      : '',
    label(String(number), {
      x: cx,
      y: cy + 3.8,
      'text-anchor': 'middle',
      'font-size': number > 99 ? 8.5 : 11,
      'font-weight': 600,
      fill: filled ? paper : ink,
    }),
  ].join('');
}

const inWords = ({ number, position }: PlacedFinding): string => `${number} ${placeInWords(position)}`;
