import { round } from './materials.ts';
import { bar, box, oval, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { lettering } from './surveyor.ts';
import { glare, scatter, weep } from './wear.ts';

const horizon = 860;

function sky(p: Picture): void {
  p.light = 'day';
  const warm = p.random.next() > 0.5;
  p.behind(() => {
    solid(
      p,
      box(-200, -200, 2400, 2000),
      p.linear(
        [
          [0, warm ? '#7f9db8' : '#9aa7b0'],
          [0.42, warm ? '#d8e1e4' : '#d3d6d6'],
          [0.6, '#e9e6dc'],
        ],
        90,
      ),
    );
    for (let k = 0; k < 26; k++) {
      const y = p.random.between(0, 620);
      p.add(
        `<ellipse cx="${p.random.between(-100, 2100)}" cy="${y}" rx="${p.random.between(120, 420)}" ry="${p.random.between(14, 60)}" fill="#fff" opacity="${p.random.between(0.12, 0.45)}" ${k < 6 ? p.soft(24) : ''}/>`,
      );
    }
    let hill = `M-200 ${horizon}`;
    for (let x = -200; x <= 2200; x += 60)
      hill += `L${x} ${horizon - 60 - 44 * Math.sin(x / 260) - p.random.between(0, 36)}`;
    solid(p, `${hill}L2200 ${horizon}z`, '#7d8c88');
    let trees = `M-200 ${horizon + 10}`;
    for (let x = -200; x <= 2200; x += 26) trees += `L${x} ${horizon - 16 - p.random.between(0, 46)}`;
    solid(p, `${trees}L2200 ${horizon + 10}z`, '#4d5b4d');
  });
  p.backBlur = 2;
}

/** Boatyard ground, sheds and other boats. */
function yard(p: Picture): void {
  sky(p);
  p.behind(() => {
    solid(p, box(-100, 640, 620, 240), '#8d9aa0');
    solid(p, 'M-140 650L210 540L560 650z', '#5a4a44');
    for (let k = 0; k < 6; k++) {
      const x = 560 + k * 290;
      p.add(`<path d="${box(x + 90, 140, 7, 640)}" fill="#7c8489"/>`);
      solid(
        p,
        `M${x} 700Q${x + 130} 730 ${x + 260} 690L${x + 220} 790Q${x + 110} 830 ${x + 30} 790z`,
        ['#e8e6df', '#30507a', '#e2ded0', '#6b2a26'][k % 4] ?? '#ddd',
      );
      solid(p, box(x + 100, 790, 60, 90), '#3b3a36');
    }
  });
  const ground = 'M-200 880H2200V1700H-200z';
  solid(
    p,
    ground,
    p.linear(
      [
        [0, '#8f8b80'],
        [1, '#57534a'],
      ],
      90,
    ),
    p.texture('bump', 0.4),
    0.28,
  );
  solid(p, ground, p.texture('grit', 0.8), p.texture('dirt', 2.2), 0.5);
  scatter(p, 420, [-20, 0, 2040, 1], (x, _, s) => {
    const depth = p.random.next() ** 1.5;
    const r = 2 + depth * 13 * (0.4 + s);
    const y = 892 + depth * 610;
    const tone = ['#b5afa2', '#3f3b33', '#78736a', '#9c9384'][Math.floor(s * 4)] ?? '#78736a';
    p.add(`<ellipse cx="${x}" cy="${y}" rx="${r}" ry="${r * 0.5}" fill="${tone}" opacity=".6"/>`);
  });
}

/** Water with ripples and a broken reflection. */
function water(p: Picture): void {
  sky(p);
  const sea = 'M-200 870H2200V1700H-200z';
  solid(
    p,
    sea,
    p.linear(
      [
        [0, '#a9bac2'],
        [0.25, '#6b8490'],
        [1, '#2b404a'],
      ],
      90,
    ),
  );
  for (let k = 0; k < 420; k++) {
    const t = p.random.next() ** 1.8;
    const y = 880 + t * 700;
    const w = 14 + t * 150;
    p.add(
      `<path d="M${p.random.between(-100, 2100)} ${y}q${w / 2} ${-3 - t * 9} ${w} 0q${-w / 2} ${2 + t * 6} ${-w} 0z" fill="${k % 2 ? '#dfe8ea' : '#1d3038'}" opacity="${0.16 + 0.24 * p.random.next()}"/>`,
    );
  }
}

/** Prop of a cradle from the ground to the hull. */
function prop(p: Picture, x: number, top: number, foot: number, ground: number): void {
  bar(p, [x, top], [foot, ground], 24, 'rust');
  solid(p, box(x - 44, top - 12, 88, 22, 6), '#6b4a2a');
}

const windows = (p: Picture, list: string[]): void => {
  for (const d of list) {
    solid(
      p,
      d,
      p.linear(
        [
          [0, '#4a5c68'],
          [0.4, '#15191c'],
          [1, '#2c363c'],
        ],
        70,
      ),
    );
    p.add(`<path d="${d}" fill="none" stroke="#5b5f60" stroke-width="5" opacity=".7"/>`);
  }
};

const topsides = (p: Picture, tone: [string, string, string]): string =>
  p.linear(
    [
      [0, tone[0]],
      [0.55, tone[1]],
      [1, tone[2]],
    ],
    88,
  );

/** Sailing yacht: `ashore` shows keel and rudder. The name goes on the quarter. */
export function yacht(p: Picture, where: 'ashore' | 'afloat', name: string, tone: 'white' | 'green'): void {
  const dry = where === 'ashore';
  if (dry) yard(p);
  else water(p);
  const lift = dry ? 0 : 90;
  const colours: [string, string, string] =
    tone === 'white' ? ['#f6f5ef', '#dcdad0', '#a09e94'] : ['#3f6a58', '#27503f', '#12281f'];
  p.group(`transform="translate(0 ${lift})"`, () => {
    const mastTop = tone === 'white' ? -420 : -260;
    if (dry) {
      p.add(`<ellipse cx="1040" cy="1370" rx="900" ry="60" fill="#1a1712" opacity=".55" ${p.soft(22)}/>`);
      const keel = tone === 'white' ? 'M900 960L1300 950L1210 1330H900z' : 'M760 960L1420 950L1300 1300H900z';
      solid(p, keel, round(p, 'rust', 90), p.texture('bump', 1.4), 0.5);
      solid(p, keel, '#6b2a24', p.texture('rust', 1.6), 0.5);
      solid(p, 'M1560 940L1680 930L1690 1240L1590 1250z', '#5d241f', p.texture('bump', 1), 0.5);
      solid(p, box(840, 1330, 440, 40), p.texture('wood', 0.8));
      solid(
        p,
        'M270 790C520 930 760 985 1100 985S1580 960 1760 840L1770 810H250z',
        topsides(p, ['#8a3a31', '#6b2922', '#3b1512']),
        p.texture('bump', 1.5),
        0.4,
      );
    }
    solid(
      p,
      'M150 660C420 700 1200 716 1800 672L1780 820C1500 890 700 900 300 830C230 790 190 720 150 660z',
      topsides(p, colours),
      p.texture('grit', 1),
      0.14,
    );
    p.add(
      `<path d="M290 822C700 892 1500 882 1782 812" stroke="${tone === 'white' ? '#28406b' : '#e6e2d2'}" stroke-width="14" fill="none"/>`,
    );
    p.add(
      `<path d="M160 676C420 716 1200 732 1798 690" stroke="${tone === 'white' ? '#28406b' : '#b89a55'}" stroke-width="7" fill="none"/>`,
    );
    p.add('<path d="M146 658C420 696 1200 712 1802 670" stroke="#7d6a4a" stroke-width="13" fill="none"/>');
    const house = 'M640 668C680 610 720 588 800 582L1240 592C1290 600 1320 630 1340 680z';
    solid(
      p,
      house,
      p.linear(
        [
          [0, '#fbfaf5'],
          [1, '#b9b7ac'],
        ],
        88,
      ),
    );
    windows(p, [box(760, 616, 120, 30, 14), box(910, 614, 130, 32, 14), box(1070, 618, 120, 32, 14)]);
    solid(p, 'M1230 600C1260 520 1380 510 1440 610L1430 670H1260z', '#2b4468', p.texture('bump', 0.7), 0.4);
    // Rails, mast, boom, rigging.
    for (let k = 0; k < 8; k++)
      p.add(`<path d="M${330 + k * 190} 690V600" stroke="#8d959a" stroke-width="7"/>`);
    p.add(
      '<path d="M200 596L330 602L1660 600L1790 590M330 640H1660" stroke="#a5adb2" stroke-width="4" fill="none"/><path d="M170 660V590L300 594V680M1800 670V588L1680 594V690" stroke="#a5adb2" stroke-width="8" fill="none"/>',
    );
    bar(p, [860, 600], [868, mastTop], 22, 'dullSteel', { noShadow: true });
    bar(p, [872, 500], [1480, 520], 20, 'dullSteel', { noShadow: true });
    solid(p, 'M880 500Q1180 430 1470 508L1466 532Q1180 524 880 522z', '#d8d5c8', p.texture('bump', 0.8), 0.6);
    p.add(
      `<path d="M166 650L866 ${mastTop}M1800 662L868 ${mastTop}M700 690L864 60L1030 692M760 692L866 ${mastTop}M960 694L868 ${mastTop}" stroke="#596066" stroke-width="4" fill="none"/>`,
    );
    bar(p, [780, 100], [950, 100], 9, 'dullSteel', { noShadow: true });
    bar(p, [250, 620], [840, -220], 15, 'whiteHose', { noShadow: true });
    lettering(
      p,
      1600,
      770,
      54,
      name,
      tone === 'white' ? '#28406b' : '#e6d9ae',
      'font-style="italic" opacity=".9"',
    );
    p.add(
      `<path d="M300 700C700 740 1300 740 1780 706L1776 738C1300 772 700 770 320 736z" fill="#fff" opacity=".16"/>`,
    );
    if (dry) {
      for (const [x, foot] of [
        [560, 470],
        [1000, 960],
        [1420, 1500],
      ] as const)
        prop(p, x, 930, foot, 1380);
      weep(p, 640, 800, 90, 50, '#6d5a3a', 0.4);
      weep(p, 1290, 810, 80, 40, '#6d5a3a', 0.4);
    }
  });
  if (!dry) float(p, 160, 1790, 900, tone === 'white' ? '#d5d8d5' : '#3c5d4f');
  else {
    bar(p, [1900, 1400], [1760, 660], 26, 'zinc');
    bar(p, [1990, 1400], [1850, 660], 26, 'zinc');
    for (let k = 0; k < 10; k++)
      p.add(`<path d="M${1890 - k * 13.6} ${1340 - k * 72}h86" stroke="#b6bcc0" stroke-width="14"/>`);
  }
}

/** Waterline, reflection and fenders of a boat afloat between two abscissae. */
function float(p: Picture, x1: number, x2: number, y: number, tone: string): void {
  const w = x2 - x1;
  const mid = x1 + w / 2;
  solid(
    p,
    `M${x1 - 120} ${y + 40}Q${mid} ${y - 16} ${x2 + 120} ${y + 40}L${x2 - 80} ${y + 110}Q${mid} ${y + 170} ${x1 + 80} ${y + 110}z`,
    p.linear(
      [
        [0, '#5f7883', 0],
        [0.3, '#52697a'],
        [0.7, '#4c646f'],
        [1, '#41565f', 0],
      ],
      90,
    ),
  );
  solid(
    p,
    `M${x1 + 60} ${y + 44}Q${mid} ${y + 30} ${x2 - 30} ${y + 44}Q${x2 - 120} ${y + 200} ${mid} ${y + 260}Q${x1 + 200} ${y + 220} ${x1 + 60} ${y + 44}z`,
    p.linear(
      [
        [0, tone, 0.6],
        [1, tone, 0],
      ],
      90,
    ),
  );
  scatter(p, 180, [x1 - 40, y + 20, w + 80, 260], (x, yy, s) =>
    p.add(
      `<path d="M${x} ${yy}q${30 + s * 40} ${-6} ${60 + s * 80} 0q${-30 - s * 40} 5 ${-60 - s * 80} 0z" fill="${s > 0.5 ? '#1d3038' : '#e6edee'}" opacity=".3"/>`,
    ),
  );
}

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
