import { float, topsides, water, windows, yard } from './boat-setting.ts';
import { round } from './materials.ts';
import { bar, box, oval, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { lettering } from './surveyor.ts';
import { glare, weep } from './wear.ts';

/** Steel motor vessel with wheelhouse. */
export function motorVessel(p: Picture, where: 'ashore' | 'afloat', name: string): void {
  const dry = where === 'ashore';
  if (dry) yard(p);
  else water(p);
  p.group(`transform="translate(0 ${dry ? 40 : 150})"`, () => {
    if (dry) {
      p.add(`<ellipse cx="1000" cy="1180" rx="980" ry="56" fill="#15120e" opacity=".6" ${p.soft(22)}/>`);
      const bottom = 'M170 800L330 960L700 1030H1640L1800 940L1840 800z';
      solid(p, bottom, topsides(p, ['#2b2e30', '#17191a', '#070808']), p.texture('bump', 1.4), 0.7);
      solid(p, bottom, p.texture('rust', 2), p.texture('streaks', 1.4), 0.5);
      p.add('<path d="M200 850L420 930H1800" stroke="#3b3f41" stroke-width="6" fill="none"/>');
      solid(p, 'M1700 950L1830 940V1090H1730z', '#1d2022', p.texture('rust', 1), 0.6);
      solid(p, box(300, 1080, 1400, 54), p.texture('wood', 1));
      for (const x of [480, 860, 1240, 1600])
        solid(p, box(x, 1010, 90, 160), p.texture('wood', 0.7), '#000000', 0.2);
      for (const x of [560, 980, 1440])
        solid(p, box(x, 900, 120, 40, 8), '#0c0d0d', p.texture('bump', 0.6), 0.8);
    }
    const hull = 'M60 500C300 590 700 610 1000 608H1880L1850 820H300C190 760 110 640 60 500z';
    solid(p, hull, topsides(p, ['#3f6b8c', '#28506e', '#13283a']), p.texture('bump', 2), 0.16);
    p.add(
      '<path d="M66 520C300 610 700 632 1880 628" stroke="#e9e4d2" stroke-width="16" fill="none"/><path d="M100 640C300 690 700 700 1870 700" stroke="#22262a" stroke-width="20" fill="none"/><path d="M98 634C300 684 700 694 1870 694" stroke="#8a8f92" stroke-width="5" fill="none"/>',
    );
    const cabin = 'M560 604L600 440H1180V606z';
    const house = 'M1080 440L1130 220H1600L1640 440z';
    const after = 'M1540 606V440H1780L1810 606z';
    for (const d of [cabin, after, house]) {
      solid(
        p,
        d,
        p.linear(
          [
            [0, '#f7f3e6'],
            [1, '#bfb9a6'],
          ],
          85,
        ),
        p.texture('streaks', 1.6),
        0.2,
      );
    }
    solid(p, box(1180, 430, 380, 180), '#d9d3c0');
    solid(p, 'M1090 224L1110 190H1640L1650 224z', '#6b4a2c', p.texture('wood', 0.8), 0.6);
    windows(p, [
      'M1130 410L1160 260H1280V410z',
      box(1300, 260, 130, 150, 6),
      'M1450 260H1570L1596 410H1450z',
      box(660, 484, 120, 74, 10),
      box(820, 484, 120, 74, 10),
      box(980, 484, 120, 74, 10),
      box(1600, 484, 120, 70, 10),
    ]);
    bar(p, [1400, 190], [1430, -40], 24, 'yellow', { noShadow: true });
    bar(p, [1340, 50], [1520, 60], 12, 'yellow', { noShadow: true });
    p.add('<path d="M1430 -30L80 480M1430 -30L1860 590" stroke="#5b6166" stroke-width="4"/>');
    for (let k = 0; k < 7; k++)
      p.add(`<path d="M${150 + k * 64} ${530 + k * 10}v-96" stroke="#d7dadb" stroke-width="8"/>`);
    p.add('<path d="M80 420L160 436L560 506" stroke="#d7dadb" stroke-width="8" fill="none"/>');
    p.add('<circle cx="1210" cy="520" r="44" fill="none" stroke="#d8562a" stroke-width="22"/>');
    lettering(p, 420, 672, 56, name, '#f1ecd8', 'transform="rotate(5 420 672)"');
    for (const x of [700, 1100, 1500]) weep(p, x, 640, 170, 40, '#6b3a1c', 0.4);
    if (!dry) {
      for (const x of [640, 1060, 1520]) {
        tube(p, `M${x} 610V690`, 8, 'white', { shadow: false });
        solid(p, box(x - 30, 690, 60, 130, 28), round(p, 'white', 0));
      }
    }
  });
  if (!dry) {
    float(p, 250, 1880, 930, '#3d5f78');
    p.add(
      '<path d="M60 1000Q180 930 330 960Q200 1010 40 1060zM1850 960Q2000 960 2200 1010L1860 1040z" fill="#f2f6f6" opacity=".8"/>',
    );
  }
}

/** Small open cruiser on a trailer or afloat. */
export function cruiser(p: Picture, where: 'ashore' | 'afloat', name: string): void {
  const dry = where === 'ashore';
  if (dry) yard(p);
  else water(p);
  p.group(`transform="translate(0 ${dry ? 60 : 170})"`, () => {
    if (dry) {
      p.add(`<ellipse cx="1020" cy="1190" rx="900" ry="46" fill="#15120e" opacity=".6" ${p.soft(20)}/>`);
      bar(p, [40, 1080], [1660, 1030], 44, 'zinc');
      for (const x of [1040, 1330]) {
        solid(p, oval(x, 1100, 118), ball2(p));
        solid(p, oval(x, 1100, 58), round(p, 'steel', 45));
      }
      solid(p, 'M900 1040Q1180 930 1480 1036L1470 1060H910z', '#22282e');
      bar(p, [420, 1070], [500, 940], 28, 'zinc');
      bar(p, [1500, 1040], [1560, 960], 28, 'zinc');
      const drive =
        'M1660 800L1810 790L1830 900L1900 930V960L1810 960L1820 1060L1760 1120L1730 960L1650 900z';
      shadow(p, drive, 10, 12, 10);
      solid(p, drive, round(p, 'black', 0));
    }
    const hull =
      'M120 610C400 640 1000 656 1690 640L1670 860C1640 930 1560 960 1400 966L760 972C480 930 220 780 120 610z';
    solid(p, hull, topsides(p, ['#f8f7f2', '#d8d6cc', '#8d8b81']));
    solid(p, 'M150 646C400 690 1000 704 1688 690L1684 760C1000 770 420 752 210 716z', '#a3361f');
    p.add(
      '<path d="M118 606C400 636 1000 652 1694 636" stroke="#2a2c2e" stroke-width="20" fill="none"/><path d="M330 840C700 930 1200 930 1660 868" stroke="#8f8d84" stroke-width="6" fill="none"/>',
    );
    const deck = 'M180 606C420 560 620 520 760 500L960 506L1010 610z';
    solid(
      p,
      deck,
      p.linear(
        [
          [0, '#ffffff'],
          [1, '#c2c0b6'],
        ],
        80,
      ),
    );
    windows(p, ['M800 500L930 370L1330 360L1380 520L1010 540z', 'M420 590L620 546L640 572L470 596z']);
    solid(p, 'M1000 600L1020 500H1640L1660 640H1010z', '#dedbd0');
    solid(p, box(1300, 480, 280, 110, 20), '#8a3524', p.texture('bump', 0.7), 0.4);
    p.add(
      '<path d="M960 380Q1180 220 1640 300L1660 620" stroke="#b5bcc1" stroke-width="12" fill="none"/><path d="M180 596L300 500L760 440" stroke="#b5bcc1" stroke-width="9" fill="none"/>',
    );
    solid(p, 'M940 376Q1180 210 1650 290L1640 330Q1200 262 960 400z', '#28406b', p.texture('bump', 0.9), 0.4);
    lettering(p, 1330, 742, 58, name, '#fbf3e2', 'font-style="italic"');
    glare(p, 560, 700, 240, 20, 0.5);
  });
  if (!dry) float(p, 260, 1690, 1040, '#cfd2cf');
}

const ball2 = (p: Picture): string =>
  p.radial([
    [0, '#3a3d40'],
    [0.8, '#1a1b1c'],
    [1, '#070707'],
  ]);
