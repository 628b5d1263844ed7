import { arc, area, outlineOf } from '../../drawing/fittings.ts';
import {
  arrow,
  asFoundAndAsItShouldBe,
  circle,
  cut,
  note,
  type Point,
  shape,
  thin,
} from '../../drawing/panels.ts';
import { hairline, wash } from '../../drawing/style.ts';

// Fore part of a boat from above, her bow up; the port sidelight stands at her port side. The sector is that of
// COLREG rule 21: from right ahead to 22.5 degrees abaft the beam.
const light: Point = [68, 94];
const reach = 62;
const sector: Point[] = [light, ...arc(light, reach, 157.5, 270)];
const hull = [
  shape('M98 12 C116 36 128 72 130 152 H66 C68 72 80 36 98 12 Z'),
  thin('M98 58 C108 72 112 96 112 152 M98 58 C88 72 84 96 84 152'),
];
const lamp = circle(light[0], light[1], 4, hairline);
const edges = thin(`M${light[0]} ${light[1]} V${light[1] - reach} M${light[0]} ${light[1]} L10.7 117.7`);

export const sidelightObscured = asFoundAndAsItShouldBe({
  key: 'sidelight-obscured',
  title: 'Sidelight masked by gear on the rail, and seen over its whole sector',
  description:
    'A boat’s fore part from above with her port sidelight. As found, gear lashed to the rail ahead of the light hides it over a hatched sector towards the bow. As it should be, nothing stands in its sector, which reaches from right ahead to 22.5 degrees abaft the beam.',
  asFound: {
    shapes: [
      area(outlineOf(sector), wash),
      cut([light, ...arc(light, reach, 235, 270)], 6),
      ...hull,
      edges,
      shape('M55 70 Q55 58 62 58 Q70 58 70 70 V76 Q70 84 62 84 Q55 84 55 76 Z', hairline),
      thin('M62 58 V84'),
      lamp,
      note('Not seen here', 4, 18),
      arrow([36, 23], [52, 46], true),
      note('Gear on rail', 4, 142),
      arrow([34, 131], [56, 82]),
    ],
    caption: ['A vessel fine on the bow', 'doesn’t see the light'],
  },
  asItShouldBe: {
    shapes: [
      area(outlineOf(sector), wash),
      ...hull,
      edges,
      lamp,
      note('Right ahead', 8, 24),
      note('112.5°', 20, 84),
      note('22.5° abaft', 4, 133),
      note('the beam', 4, 144),
    ],
    caption: ['Nothing in its sector, under', 'sail and at every heel'],
  },
});
