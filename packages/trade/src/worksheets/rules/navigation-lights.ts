import { measured, number } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { comply, type FittedLight, judgeSituation, stateOf } from './navigation-lights-fitted.ts';
import {
  judgePlaces,
  keeps,
  limitWords,
  mastheadHeightNeeded,
  type Places,
  placeRules,
} from './navigation-lights-heights.ts';
import { type Given, inputs } from './navigation-lights-inputs.ts';
import { lightsPlan } from './navigation-lights-plan.ts';
import {
  arcs,
  intensityFor,
  intensityRequired,
  lightLabels,
  lightNames,
  rangeOf,
  rangeRequired,
  situations,
} from './navigation-lights-rules.ts';

const fittedLights = (v: Given): FittedLight[] =>
  v.fitted.map((row) => ({
    light: row.light,
    lights: row.lights,
    unobstructed: row.unobstructed,
    ...(row.range ? { range: row.range.in('nmi') } : {}),
    ...(row.intensity ? { intensity: row.intensity.in('cd') } : {}),
    ...(row.arc ? { arc: row.arc.in('deg') } : {}),
  }));

function places(v: Given): Places {
  const taken = {
    breadth: v.breadth?.in('m'),
    mastheadHeight: v.mastheadHeight?.in('m'),
    mastheadAboveSidelights: v.mastheadAboveSidelights?.in('m'),
    afterMastheadAbove: v.afterMastheadAbove?.in('m'),
    mastheadSpacing: v.mastheadSpacing?.in('m'),
    mastheadFromStem: v.mastheadFromStem?.in('m'),
  };
  const length = v.length.in('m');
  const has = (light: string) => v.fitted.some((row) => row.light === light);
  return {
    length,
    rules: v.rules,
    combined: has('combined') && !has('port'),
    twoMastheads: length >= 50 || has('after-masthead'),
    ...Object.fromEntries(Object.entries(taken).filter(([, value]) => value !== undefined)),
  };
}

function work(v: Given) {
  const length = v.length.in('m');
  const fitted = fittedLights(v);
  const compliances = comply(situations(v.vessel, length, v.rules, v.maximumSpeed?.in('kn')), fitted, length);
  const driven = v.vessel === 'power' || v.vessel === 'auxiliary';
  return { length, fitted, compliances, where: driven ? placeRules(places(v)) : [] };
}

/** Lights that are fitted, wanted by none of the chosen ways, and wrong: dark, too weak or of the wrong arc. */
function spareFaults({ fitted, compliances, length }: ReturnType<typeof work>): Judgement[] {
  const wanted = new Set(compliances.flatMap(({ way }) => way.lights));
  return fitted.flatMap((row): Judgement[] => {
    const { state, words } = stateOf(row, length);
    if (wanted.has(row.light) || state === 'good' || state === 'unknown') return [];
    const reason = `The ${lightNames[row.light]} ${words}. Other lights fitted do what the Rules ask, or come nearer to it.`;
    return [{ verdict: 'attention', reason }];
  });
}

/** Navigation lights fitted against those the Rules require. */
export const navigationLights = defineWorksheet({
  kind: 'navigation-lights',
  version: 1,
  title: 'Navigation lights',
  group: 'rules',
  system: 'navigation-lights',
  purpose:
    'Which lights a vessel needs under power, under sail and at anchor, and which of those fitted are missing, too weak, dark or badly placed.',
  inputs,
  refuse: (v) => [
    ...(v.mastheadHeight && !v.breadth && v.length.in('m') >= 20
      ? [
          {
            field: 'breadth',
            message: 'From 20 m the height of the masthead light goes by the breadth: give it.',
          },
        ]
      : []),
    ...(v.breadth && v.breadth.in('m') > v.length.in('m')
      ? [{ field: 'breadth', message: 'The breadth can’t be more than the length.' }]
      : []),
  ],
  applicability:
    'International collision regulations, or the United States inland rules. Lights for towing, pushing, fishing, pilotage, and vessels not under command or restricted are not covered; local rules may ask for more.',
  compute: (v) => {
    const worked = work(v);
    const { length, compliances, where } = worked;
    const states = compliances.flatMap(({ states: found }) => found);
    const mastheadRange = rangeRequired('masthead', length);
    const range = (light: 'port' | 'stern' | 'all-round') => rangeRequired(light, length);
    const tall =
      length < 20
        ? length < 12
          ? null
          : 2.5
        : v.breadth
          ? mastheadHeightNeeded(v.breadth.in('m'), v.rules)
          : null;
    return {
      outputs: {
        mastheadRange: measured('Range of a masthead light', mastheadRange, 'nmi'),
        sidelightRange: measured('Range of sidelights', range('port'), 'nmi'),
        sternRange: measured('Range of a sternlight', range('stern'), 'nmi'),
        allRoundRange: measured('Range of an all-round light', range('all-round'), 'nmi'),
        mastheadIntensity: measured('Intensity of a masthead light', intensityRequired(mastheadRange), 'cd'),
        sidelightIntensity: measured('Intensity of sidelights', intensityRequired(range('port')), 'cd'),
        sternIntensity: measured('Intensity of a sternlight', intensityRequired(range('stern')), 'cd'),
        mastheadIntensityByFormula: measured(
          'Intensity of a masthead light by the formula',
          intensityFor(mastheadRange),
          'cd',
          { digits: 5 },
        ),
        mastheadArc: measured('Arc of a masthead light', arcs.masthead.degrees, 'deg', { digits: 4 }),
        sidelightArc: measured('Arc of each sidelight', arcs.port.degrees, 'deg', { digits: 4 }),
        sternArc: measured('Arc of a sternlight', arcs.stern.degrees, 'deg', { digits: 4 }),
        mastheadHeightNeeded: measured('Least height of the masthead light', tall, 'm', { also: 'ft' }),
        missing: number('Lights missing', states.filter(({ state }) => state === 'missing').length),
        faulty: number(
          'Lights too weak, dark or of the wrong arc',
          states.filter(({ state }) => ['short', 'dark', 'arc'].includes(state)).length,
        ),
      },
      tables: [
        {
          title: 'Lights required',
          columns: ['When', 'Light', 'Arc', 'Range', 'Intensity', 'Found'],
          rows: compliances.flatMap(({ situation, states: found }) =>
            found.map(({ light, words }) =>
              light === 'torch'
                ? [situation.title, lightLabels[light], '–', '–', '–', words]
                : [
                    situation.title,
                    lightLabels[light],
                    `${arcs[light].degrees}°`,
                    `${rangeRequired(light, length)} nmi`,
                    `${intensityRequired(rangeRequired(light, length))} cd`,
                    words,
                  ],
            ),
          ),
        },
        ...(where.length === 0
          ? []
          : [
              {
                title: 'Places of the lights',
                columns: ['What', 'Limit', 'Found', 'Kept'],
                rows: where.map((rule) => {
                  const kept = keeps(rule);
                  return [
                    rule.what,
                    limitWords(rule),
                    rule.found === undefined ? '–' : `${formatNumber(rule.found, 3)} m`,
                    kept === undefined ? 'not measured' : kept ? 'yes' : 'no',
                  ];
                }),
              },
            ]),
      ],
      ...conclude([...compliances.flatMap(judgeSituation), ...spareFaults(worked), ...judgePlaces(where)]),
      working: [
        line(
          'Ranges by Rule 22',
          `masthead ${mastheadRange}, side ${range('port')}, stern ${range('stern')}, all-round ${range('all-round')} nmi at ${v.length.text()}`,
        ),
        line(
          'Intensity of a masthead light',
          'I = 3.43·10⁶ · T · D² · K⁻ᴰ',
          `3.43·10⁶ × 2·10⁻⁷ × ${mastheadRange}² × 0.8^−${mastheadRange}`,
          `${formatNumber(intensityFor(mastheadRange), 4)} cd; printed ${intensityRequired(mastheadRange)} cd`,
        ),
        ...worked.fitted
          .filter((row) => row.intensity !== undefined)
          .map((row) =>
            line(
              `Reach of the ${lightNames[row.light]}`,
              `${formatNumber(row.intensity ?? 0, 4)} cd is seen at ${formatNumber(rangeOf(row.intensity ?? 0), 3)} nmi`,
            ),
          ),
        ...(length >= 20 && v.breadth
          ? [
              line(
                'Height of the masthead light',
                v.rules === 'international' ? 'min(12, max(6, breadth))' : 'min(8, max(5, breadth))',
                `${formatNumber(tall ?? 0, 3)} m above the uppermost continuous deck`,
              ),
            ]
          : []),
      ],
    };
  },
  draw: (v) => {
    const { compliances, length } = work(v);
    const plan = lightsPlan(compliances, length);
    return plan ? [plan] : [];
  },
  cautions: [
    'Ranges hold for clear lenses, the right lamp and full voltage. A wrong lamp, a yellowed lens or a voltage drop can halve the light without a sign on the lantern.',
    'Colour and the fading at the edges of the arcs are not measured on board: rely on the lantern’s approval mark.',
    'Do not climb a mast to test a light without a second person and proper gear.',
  ],
  sources: [
    {
      citation: 'United States inland rules, 33 CFR 83.21 to 83.23, 83.25, 83.30: lights, arcs, ranges',
      standing: 'printed',
      note: '2015 edition; 83.22 also in a copy of June 2026',
    },
    {
      citation: '33 CFR 84.02, 84.03, 84.14, 84.15: heights, spacing, intensity with its table, sectors',
      standing: 'printed',
      note: 'the printed candela are the limits: 0.9 at 1 nmi though the formula gives 0.86',
    },
    {
      citation: 'International collision regulations 1972, Rules 21 to 23, 25, 30',
      standing: 'secondary',
      note: 'Rule 21 in a copy of MSN 1781; the others in a public repository’s copy',
    },
    {
      citation:
        'International collision regulations, Annex I sections 2, 3, 8, 9: heights, spacing, intensity, sectors',
      standing: 'secondary',
      note: 'two nautical study pages and a public repository’s copy agree',
    },
  ],
});
