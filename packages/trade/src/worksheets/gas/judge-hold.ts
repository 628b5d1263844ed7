import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import { explainHold, type Held } from './pressure-hold.ts';

/** From here on, weather alone may move a gauge that reads against the air. Common practice, no source. */
const longTest = 60;

interface HowHeld {
  minutes: number;
  /** The shortest test accepted, minutes. */
  minimum: number;
  /** Whether the air pressure was read again at the end. */
  airFollowed: boolean;
  /** Prints a pressure given in mbar. */
  p: (mbar: number) => string;
}

/** What a pressure hold says of the system, in words. */
export function judgeHold(held: Held, { minutes, minimum, airFollowed, p }: HowHeld): Judgement[] {
  const { fall, least, perKelvin } = explainHold(held);
  if (minutes < minimum) {
    const reason = `Held for ${formatNumber(minutes)} min; at least ${formatNumber(minimum)} min are needed to judge.`;
    // A fall that shows this soon needs no longer test.
    if (fall < least) return [{ verdict: 'indeterminate', reason }];
  }
  if (fall >= least) return judgeFall(held, p);
  if (fall <= -least) {
    const reason = `Pressure rose by ${p(-fall)}: a cylinder valve may be passing, or the piping warmed. Repeat the test.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  const judgements: Judgement[] = [
    {
      verdict: 'satisfactory',
      reason: `No fall that this gauge can show: it takes ${p(least)} to be told from none.`,
    },
  ];
  if (fall >= held.resolution) {
    const reason = `A fall of ${p(fall)} shows on the gauge; only the thermometer’s resolution explains it. Repeat with a finer thermometer or for longer.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (!held.warmth && perKelvin > held.resolution) {
    const reason = `Temperature was not taken: warming by 1 K would hide a fall of ${p(perKelvin)}.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (minutes >= longTest && !airFollowed) {
    const reason = `The air pressure was not read again after ${formatNumber(minutes)} min: if it fell by a few millibar, a fall of the gas as great is hidden.`;
    judgements.push({ verdict: 'attention', reason });
  }
  return judgements;
}

function judgeFall(held: Held, p: HowHeld['p']): Judgement[] {
  const { fall, perKelvin } = explainHold(held);
  if (held.warmth)
    return [
      {
        verdict: 'unsatisfactory',
        reason: `Pressure fell by ${p(fall)} that temperature does not explain: the system leaks.`,
      },
    ];
  const cooling = formatNumber(fall / perKelvin, 2);
  return [
    {
      verdict: 'unsatisfactory',
      reason: `Pressure fell by ${p(fall)}: the system failed to hold and is to be taken as leaking.`,
    },
    {
      verdict: 'attention',
      reason: `Temperature was not taken; cooling by ${cooling} K would do the same. Repeat with the temperature taken to be sure.`,
    },
  ];
}
