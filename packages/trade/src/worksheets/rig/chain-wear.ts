import { chart } from '../../drawing/chart.ts';
import { checked, fallback, measure, optional, words } from '../core/fields.ts';
import { rows } from '../core/list-fields.ts';
import { measured, said } from '../core/outputs.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';
import { liftingLimit } from './chain-wear-table.ts';

const diameter = { unit: 'mm', units: ['in'], above: 0, max: 150 } as const;
const length = { unit: 'mm', units: ['cm', 'm', 'in', 'ft'], above: 0, max: 100_000 } as const;
const share = { unit: '%', above: 0, max: 60 } as const;

const inputs = {
  newDiameter: measure({
    label: 'Diameter of the wire when new',
    help: 'The maker’s, or by calliper on the side of an unworn link, under the zinc',
    ...diameter,
  }),
  links: rows({
    label: 'Links measured',
    help: 'At the worn crown where links bear on each other; the chain pulled out and looked over first',
    each: 'link',
    max: 60,
    columns: {
      place: optional(words({ label: 'Where', max: 60 })),
      first: measure({ label: 'Diameter', ...diameter }),
      second: optional(measure({ label: 'Across it, at right angles', ...diameter })),
    },
  }),
  resolution: fallback(
    measure({
      label: 'Smallest change the calliper shows',
      unit: 'mm',
      units: ['in'],
      above: 0,
      max: 2,
    }),
    0.1,
  ),
  warnAt: fallback(measure({ label: 'Wear that calls for attention', ...share }), 7),
  renewAt: fallback(measure({ label: 'Renewal limit', help: 'Of the wire diameter', ...share }), 10),
  newLength: optional(measure({ label: 'Length of a run of links when new', ...length })),
  nowLength: optional(
    measure({ label: 'Length of the same number of links now', help: 'Pulled straight', ...length }),
  ),
  stretchLimit: fallback(measure({ label: 'Greatest stretch accepted', ...share }), 5),
  damage: checked({ label: 'A link bent, twisted, cracked or deeply pitted' }),
};

type Given = Values<typeof inputs>;

/** Strength left of a worn link as a share of new, from its diameter and the new one: by area. */
export const strengthLeft = (worn: number, asNew: number): number => Math.min(1, (worn / asNew) ** 2);

const percentOf = (part: number, whole: number) => settle((100 * part) / whole);

function linksOf(v: Given) {
  const asNew = v.newDiameter.in('mm');
  return v.links.map((link, at) => {
    const first = link.first.in('mm');
    const mean = settle(link.second ? (first + link.second.in('mm')) / 2 : first);
    return { name: link.place ?? `link ${at + 1}`, mean, wear: percentOf(asNew - mean, asNew) };
  });
}

function judge(
  v: Given,
  worst: ReturnType<typeof linksOf>[number],
  stretch: number | undefined,
): Judgement[] {
  const renew = v.renewAt.in('%');
  const warn = v.warnAt.in('%');
  const shows = percentOf(v.resolution.in('mm'), v.newDiameter.in('mm'));
  const f = (value: number) => formatNumber(value, 3);
  const judged: Judgement[] = [];
  const worn = `The most worn link, ${worst.name}, has lost ${f(worst.wear)} % of its diameter`;
  if (worst.wear >= renew) {
    judged.push({ verdict: 'unsatisfactory', reason: `${worn}; the renewal limit is ${f(renew)} %.` });
  } else if (worst.wear + shows >= renew) {
    judged.push({
      verdict: 'attention',
      reason: `${worn}, which this calliper can’t tell from the renewal limit of ${f(renew)} %: measure with a finer one.`,
    });
  } else if (worst.wear >= warn) {
    judged.push({ verdict: 'attention', reason: `${worn}; attention is called for from ${f(warn)} %.` });
  } else if (worst.wear < -Math.max(shows, 3)) {
    judged.push({
      verdict: 'indeterminate',
      reason: `Every link measures more than the diameter given as new by at least ${f(-worst.wear)} %: that diameter is not this chain’s.`,
    });
  } else {
    judged.push({
      verdict: 'satisfactory',
      reason:
        worst.wear <= shows
          ? `No wear that this calliper can show: it would take more than ${f(shows)} % to be told from none.`
          : `${worn}, below ${f(warn)} %.`,
    });
  }
  if (stretch !== undefined) {
    const limit = v.stretchLimit.in('%');
    judged.push({
      verdict: stretch > limit ? 'unsatisfactory' : 'satisfactory',
      reason: `The run of links is ${f(stretch)} % longer than new; more than ${f(limit)} % is not accepted.`,
    });
  }
  if (v.damage === 'yes')
    judged.push({
      verdict: 'unsatisfactory',
      reason: 'A link is bent, twisted, cracked or deeply pitted: cut it out or renew the chain.',
    });
  if (v.damage === 'not-examined')
    judged.push({
      verdict: 'attention',
      reason: 'The chain was not examined for bent, cracked or pitted links.',
    });
  return judged;
}

/** Wear of anchor chain at the crowns, its stretch, and the strength left. */
export const chainWear = defineWorksheet({
  kind: 'chain-wear',
  version: 1,
  title: 'Wear of anchor chain',
  group: 'rig',
  system: 'ground-tackle',
  purpose:
    'Tells from calliper readings at the crowns how much of a chain’s diameter and strength is left, and whether it has stretched.',
  inputs,
  refuse: (v) => [
    ...((v.newLength === undefined) === (v.nowLength === undefined)
      ? []
      : [
          {
            field: v.newLength ? 'nowLength' : 'newLength',
            message: 'Give the length of the links both when new and now, or leave both out.',
          },
        ]),
    ...(v.warnAt.in('%') > v.renewAt.in('%')
      ? [{ field: 'warnAt', message: 'The wear that calls for attention can’t be above the renewal limit.' }]
      : []),
    ...v.links.flatMap((link, at) =>
      link.first.in('mm') > 1.5 * v.newDiameter.in('mm')
        ? [
            {
              field: `links/${at}/first`,
              message: `Link ${at + 1} measures ${link.first.text()}, half as much again as the ${v.newDiameter.text()} given as new.`,
            },
          ]
        : [],
    ),
  ],
  applicability:
    'Welded short-link chain of anchors and moorings. The limit is a rule of practice, not law; chain used for lifting has its own.',
  compute: (v) => {
    const links = linksOf(v);
    const worst = links.reduce((a, b) => (b.mean < a.mean ? b : a));
    const asNew = v.newDiameter.in('mm');
    const left = 100 * strengthLeft(worst.mean, asNew);
    const lifting = liftingLimit(v.newDiameter.in('in'));
    const stretch =
      v.newLength && v.nowLength
        ? percentOf(v.nowLength.in('mm') - v.newLength.in('mm'), v.newLength.in('mm'))
        : undefined;
    const f = (value: number) => formatNumber(value, 4);
    return {
      outputs: {
        leastDiameter: measured('Least diameter', worst.mean, 'mm', { digits: 4, also: 'in' }),
        wear: measured('Greatest wear', worst.wear, '%'),
        strengthLeft: measured('Strength left there, by area', left, '%'),
        renewalDiameter: measured('Renew at a diameter of', asNew * (1 - v.renewAt.in('%') / 100), 'mm', {
          digits: 4,
          also: 'in',
        }),
        stretch: measured('Stretch', stretch ?? null, '%'),
        liftingLeast: measured(
          'Least diameter that law allows on lifting chain of this size',
          lifting?.least ?? null,
          'in',
          { digits: 4, also: 'mm' },
        ),
        worstLink: said('Most worn link', worst.name),
      },
      ...conclude(judge(v, worst, stretch)),
      working: [
        line('Most worn link', worst.name, `mean of the readings across it`, `${f(worst.mean)} mm`),
        line(
          'Wear',
          '(d₀ − d) / d₀',
          `(${f(asNew)} − ${f(worst.mean)}) / ${f(asNew)}`,
          `${formatNumber(worst.wear, 3)} %`,
        ),
        line('Strength left', '(d / d₀)²', `(${f(worst.mean)} / ${f(asNew)})²`, `${formatNumber(left, 3)} %`),
        ...(stretch === undefined
          ? []
          : [
              line(
                'Stretch',
                '(now − new) / new',
                `(${v.nowLength?.text()} − ${v.newLength?.text()}) / ${v.newLength?.text()}`,
                `${formatNumber(stretch, 3)} %`,
              ),
            ]),
        ...(lifting
          ? [line('For comparison', `lifting chain of ${lifting.size} may wear to`, `${f(lifting.least)} in`)]
          : []),
      ],
      tables: [
        {
          title: 'Links measured',
          columns: ['Link', 'Mean diameter', 'Wear', 'Strength left'],
          rows: links.map((link) => [
            link.name,
            `${f(link.mean)} mm`,
            `${formatNumber(link.wear, 3)} %`,
            `${formatNumber(100 * strengthLeft(link.mean, asNew), 3)} %`,
          ]),
        },
      ],
    };
  },
  draw: (v) => {
    const links = linksOf(v);
    const renew = v.renewAt.in('%');
    const points = (worn: boolean) =>
      links.flatMap(
        (link, at): Array<[number, number]> =>
          link.wear >= renew === worn ? [[at + 1, Math.max(0, link.wear)]] : [],
      );
    const top = Math.max(renew, ...links.map((link) => link.wear)) * 1.2;
    return [
      chart({
        key: 'wear',
        title: 'Wear of the links measured',
        description: `Wear by link: ${links.map((link) => `${link.name} ${formatNumber(link.wear, 3)} %`).join('; ')}.`,
        x: {
          label: 'Link, in the order given',
          domain: [0.4, links.length + 0.6],
          ticks: numbered(links.length),
        },
        y: { label: 'Wear, % of diameter', domain: [0, top] },
        height: 240,
        limits: [
          { axis: 'y', at: renew, words: 'renew' },
          { axis: 'y', at: v.warnAt.in('%'), words: 'attention' },
        ],
        series: [
          { kind: 'bars', points: points(false) },
          { kind: 'bars', points: points(true), strong: true },
        ],
      }),
    ];
  },
  cautions: [
    'A chain is as strong as its worst link, and this is of the links that were measured: look at both ends, the part in the locker sump and what lies on the windlass.',
    'Pull chain out with the windlass isolated and hands clear of gypsy and hawse.',
    'This is an indication by a surveyor. A proof test by a test house tells more; never lift with anchor chain.',
  ],
  sources: [
    {
      citation: 'Renewal at 10 % of the wire diameter',
      standing: 'practice',
      note: 'common practice (ybw forum 556989); makers and classification quoted at 12 to 13 % (svlux.blogspot, linksmarine.es). Attention from 7 % is our choice',
    },
    { citation: 'Strength left by area, (d/d₀)²', standing: 'practice', note: 'common practice, no source' },
    {
      citation:
        '29 CFR 1915.118 table G-2, 1926.251 table H-1 and 1910.184 table N-184-1: wear of lifting chain',
      standing: 'printed',
      note: 'United States law for lifting, edition of 2015, shown for comparison only; N-184-1 misprints 45/64 as 4 5/64',
    },
    {
      citation: '29 CFR 1917.42(h)(3)(iv): stretch over 5 %, bent or twisted links',
      standing: 'printed',
      note: 'United States law for cargo slings, taken as the measure of stretch and damage',
    },
  ],
});

// Twenty numbers are as many as the axis has room for.
const numbered = (count: number) =>
  Array.from({ length: count }, (_, at) => ({ at: at + 1, words: String(at + 1) })).filter(
    ({ at }) => (at - 1) % Math.ceil(count / 20) === 0,
  );
