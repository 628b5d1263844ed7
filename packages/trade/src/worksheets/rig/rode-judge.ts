import { convert, settle } from '../core/units.ts';
import type { Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { type Lie, type Rode, tangentLength, weightInWater } from './rode-catenary.ts';
import type { RodeGiven } from './rode-inputs.ts';

/** One part of the rode and what it may work at, lbf. */
export interface Part {
  name: string;
  limit: number;
  from: string;
}

/** A force in lbf as printed. */
export const pounds = (value: number) => `${formatNumber(value, 4)} lbf`;

/** Rode let out over the height it spans. */
export const scopeOf = (rode: Rode): number => settle((rode.chain + rode.rope) / rode.height);

/** Each part's limit against the load, and the weakest against the pull at the bow (N), if known. */
export function judgeParts(
  parts: readonly Part[],
  load: number,
  bowTension: number | undefined,
): Judgement[] {
  const weak = parts.filter((part) => part.limit < load);
  const weakest = parts.reduce((a, b) => (b.limit < a.limit ? b : a));
  if (weak.length > 0) {
    return weak.map((part) => ({
      verdict: 'unsatisfactory',
      reason: `The ${part.name} may work at ${pounds(part.limit)} (${part.from}); the load is ${pounds(load)}.`,
    }));
  }
  const judged: Judgement[] = [
    {
      verdict: 'satisfactory',
      reason: `Every part may work at the load of ${pounds(load)}; the weakest is the ${weakest.name} at ${pounds(weakest.limit)}.`,
    },
  ];
  if (bowTension !== undefined && bowTension > convert(weakest.limit, 'lbf', 'N')) {
    const reason = `With the weight of the chain the pull at the bow is ${pounds(convert(bowTension, 'N', 'lbf'))}, more than the ${weakest.name} may work at.`;
    judged.push({ verdict: 'attention', reason });
  }
  return judged;
}

/** The pull on the anchor and the scope. */
export function judgeLie(v: RodeGiven, rode: Rode, lie: Lie): Judgement[] {
  const scope = scopeOf(rode);
  const limit = v.angleLimit.in('deg');
  const judged: Judgement[] = [
    lie.angle > limit
      ? {
          verdict: 'unsatisfactory',
          reason: `At this load the rode pulls up on the anchor at ${formatNumber(lie.angle, 3)}°; more than ${formatNumber(limit, 3)}° breaks it out. Let out more.`,
        }
      : {
          verdict: 'satisfactory',
          reason:
            lie.angle > 0
              ? `At this load the rode pulls up on the anchor at ${formatNumber(lie.angle, 3)}°, within ${formatNumber(limit, 3)}°.`
              : `At this load ${formatNumber(lie.grounded, 3)} m of chain still lies on the seabed.`,
        },
  ];
  if (rode.rope > 0 && scope < v.leastScope.in('one')) {
    const reason = `The scope is ${formatNumber(scope, 3)}; with rope at least ${v.leastScope.text()} is asked for.`;
    judged.push({ verdict: 'attention', reason });
  }
  return judged;
}

/** How the rode lies, as written on paper. */
export function workLie(rode: Rode, lie: Lie): string[] {
  const f = (value: number) => formatNumber(value, 4);
  const { height, pull, weight } = rode;
  const scope = line(
    'Scope',
    'rode let out / (depth + bow height)',
    `${f(rode.chain + rode.rope)} / ${f(height)}`,
    formatNumber(scopeOf(rode), 3),
  );
  const hanging =
    weight > 0
      ? [
          line(
            'Weight of the chain in water',
            'mass × g × 0.87',
            `${f(weight / weightInWater(1))} kg/m × 9.807 × 0.87`,
            `${f(weight)} N/m`,
          ),
          line(
            'All-chain length that lies flat',
            '√(h (h + 2F/w))',
            `√(${f(height)} × (${f(height)} + 2 × ${f(pull)} / ${f(weight)}))`,
            `${f(tangentLength(height, pull, weight))} m`,
          ),
        ]
      : [];
  return [
    scope,
    ...hanging,
    line('Angle of pull at the anchor', 'from the curve', `${formatNumber(lie.angle, 3)}°`),
    line('Pull at the bow', '√(F² + V²) at the roller', `${f(lie.bowTension)} N`),
  ];
}
