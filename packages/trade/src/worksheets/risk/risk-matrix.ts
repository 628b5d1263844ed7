import {
  codeOf,
  levelOfChance,
  type Probability,
  probabilities,
  type Risk,
  type RiskLevel,
  riskLevels,
  riskOf,
  severities,
} from '../../risk-table.ts';
import type { Verdict } from '../../vocabulary.ts';
import { choice, fallback, optional, plainNumber, words, yesNo } from '../core/fields.ts';
import { said } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type InputProblem, type Values } from '../core/worksheet.ts';
import { drawMatrix } from './risk-drawing.ts';

const severityChoices = {
  catastrophic: '1 Catastrophic: death, lasting total disability or loss of the boat',
  critical: '2 Critical: lasting partial disability, several in hospital or major damage',
  marginal: '3 Marginal: an injury that costs working days, or damage that stops the boat',
  negligible: '4 Negligible: a lesser injury or damage',
} as const;

const probabilityChoices = {
  frequent: 'A Frequent: likely to happen often in the boat’s life',
  probable: 'B Probable: will happen several times',
  occasional: 'C Occasional: likely to happen some time',
  remote: 'D Remote: unlikely but possible',
  improbable: 'E Improbable: so unlikely that it may be taken not to happen',
  eliminated: 'F Eliminated: can’t happen, the hazard is gone',
} as const;

const inputs = {
  hazard: optional(words({ label: 'Hazard', help: 'What could happen, in a few words' })),
  severity: choice({ label: 'Severity of the worst that can credibly happen', choices: severityChoices }),
  probability: optional(
    choice({
      label: 'Probability over the life of the boat',
      help: 'As she is now; or give the chance as a number',
      choices: probabilityChoices,
    }),
  ),
  chance: optional(
    plainNumber({
      label: 'Chance over the life of the boat',
      help: 'Between 0 and 1, where there are figures to go by',
      above: 0,
      max: 1,
    }),
  ),
  severityAfter: optional(choice({ label: 'Severity after the work recommended', choices: severityChoices })),
  probabilityAfter: optional(
    choice({ label: 'Probability after the work recommended', choices: probabilityChoices }),
  ),
  hazardRemoved: fallback(
    yesNo({
      label: 'The hazard itself is removed',
      help: 'Not by warnings, training, procedure or protective gear; needed for probability F',
    }),
    false,
  ),
  worstAccepted: fallback(
    choice({
      label: 'Lowest risk judged unsatisfactory',
      help: 'The firm’s choice; the level below it calls for attention',
      choices: { high: 'High', serious: 'Serious', medium: 'Medium' },
    }),
    'serious',
  ),
};

type Given = Values<typeof inputs>;

function refuse(v: Given): InputProblem[] {
  const problems: InputProblem[] = [];
  if ((v.probability === undefined) === (v.chance === undefined)) {
    const message = 'Give the probability as a level or the chance as a number, one of the two.';
    problems.push({ field: v.probability ? 'chance' : 'probability', message });
  }
  if ((v.severityAfter === undefined) !== (v.probabilityAfter === undefined)) {
    const message = 'Give severity and probability after the work together, or leave both out.';
    problems.push({ field: v.severityAfter ? 'probabilityAfter' : 'severityAfter', message });
  }
  if (!v.hazardRemoved) {
    const message =
      'Probability F is for a hazard that is removed: warnings, training, procedure and protective gear can’t bring it there.';
    if (v.probability === 'eliminated') problems.push({ field: 'probability', message });
    if (v.probabilityAfter === 'eliminated') problems.push({ field: 'probabilityAfter', message });
  }
  return problems;
}

function risksOf(v: Given): { now: Risk; after?: Risk } {
  const probability: Probability = v.probability ?? levelOfChance(v.chance ?? 1);
  return {
    now: { severity: v.severity, probability },
    ...(v.severityAfter && v.probabilityAfter
      ? { after: { severity: v.severityAfter, probability: v.probabilityAfter } }
      : {}),
  };
}

const order = Object.keys(riskLevels) as RiskLevel[];

function verdictOf(level: RiskLevel, worst: RiskLevel): Verdict {
  const at = order.indexOf(level);
  const limit = order.indexOf(worst);
  if (at <= limit) return 'unsatisfactory';
  return at === limit + 1 && level !== 'eliminated' && level !== 'low' ? 'attention' : 'satisfactory';
}

const named = (risk: Risk) =>
  `${codeOf(risk)} (${severities[risk.severity].name.toLowerCase()}, ${probabilities[risk.probability].name.toLowerCase()})`;

function judge(v: Given): Judgement[] {
  const { now, after } = risksOf(v);
  const level = riskOf(now);
  const what = v.hazard ? `${v.hazard}: the` : 'The';
  const words = riskLevels[level].toLowerCase();
  const judgements: Judgement[] = [
    {
      verdict: verdictOf(level, v.worstAccepted),
      reason:
        level === 'eliminated'
          ? `${what} hazard is eliminated, ${named(now)}.`
          : `${what} risk is ${words}, ${named(now)}; ${riskLevels[v.worstAccepted].toLowerCase()} and above is judged unsatisfactory.`,
    },
  ];
  if (!after) return judgements;
  const then = riskOf(after);
  if (order.indexOf(then) < order.indexOf(level)) {
    const reason = `After the work the risk would be ${riskLevels[then].toLowerCase()}, higher than now: check the ratings.`;
    judgements.push({ verdict: 'attention', reason });
  } else if (verdictOf(then, v.worstAccepted) === 'unsatisfactory') {
    const reason = `The work recommended is not enough: the risk would still be ${riskLevels[then].toLowerCase()}, ${named(after)}.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
  } else {
    const reason = `After the work the risk would be ${riskLevels[then].toLowerCase()}, ${named(after)}.`;
    judgements.push({ verdict: 'satisfactory', reason });
  }
  return judgements;
}

/** MIL-STD-882E, the risk of a finding by severity and probability. */
export const riskMatrix = defineWorksheet({
  kind: 'risk-matrix',
  version: 1,
  title: 'Risk by severity and probability',
  group: 'risk',
  system: 'fire-safety',
  purpose:
    'Rates the risk of a hazard found, from how bad the worst credible outcome is and how likely, now and after the work recommended.',
  inputs,
  refuse,
  applicability:
    'Hazards to people, boat and surroundings, rated by a surveyor’s judgement. The standard’s bounds in money are set for large systems and are left out; figures for the chance are of one boat over her life.',
  compute: (v) => {
    const { now, after } = risksOf(v);
    const level = riskOf(now);
    const then = after && riskOf(after);
    return {
      outputs: {
        code: said('Assessment code', codeOf(now)),
        risk: said('Risk', level, riskLevels[level]),
        probability: said('Probability', now.probability, probabilities[now.probability].name),
        codeAfter: said('Assessment code after the work', after ? codeOf(after) : null),
        riskAfter: said('Risk after the work', then ?? null, then ? riskLevels[then] : undefined),
      },
      ...conclude(judge(v)),
      working: [
        ...(v.chance === undefined
          ? []
          : [
              line(
                'Chance over the boat’s life',
                formatNumber(v.chance, 3),
                `level ${probabilities[now.probability].level}, ${probabilities[now.probability].name.toLowerCase()}`,
              ),
            ]),
        line(
          'Risk now',
          `severity ${severities[now.severity].category} with probability ${probabilities[now.probability].level}`,
          codeOf(now),
          riskLevels[level],
        ),
        ...(after && then
          ? [
              line(
                'Risk after the work',
                `severity ${severities[after.severity].category} with probability ${probabilities[after.probability].level}`,
                codeOf(after),
                riskLevels[then],
              ),
            ]
          : []),
      ],
    };
  },
  draw: (v) => {
    const { now, after } = risksOf(v);
    return [drawMatrix(now, after)];
  },
  cautions: [
    'A rating orders work; it proves nothing safe. Where people can be hurt, put the boat out of use until a licensed trade has put it right.',
    'Two surveyors may rate the same hazard differently: say in the finding what the rating rests on.',
  ],
  sources: [
    {
      citation:
        'MIL-STD-882E (2012, change 1 of 2023), tables I to III; appendix A, table A-II for the chance',
      standing: 'secondary',
      note: 'public domain; seen in several public transcriptions that agree, not in the document itself. Severities are reworded for boats',
    },
    {
      citation: 'Which level is unsatisfactory and which calls for attention',
      standing: 'practice',
      note: 'common practice, no source; the firm’s own choice goes in',
    },
  ],
});
