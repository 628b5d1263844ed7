import { float, prop, topsides, water, windows, yard } from './boat-setting.ts';
import { round } from './materials.ts';
import { bar, box, solid } from './parts.ts';
import type { Picture } from './picture.ts';
import { lettering } from './surveyor.ts';
import { weep } from './wear.ts';

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
