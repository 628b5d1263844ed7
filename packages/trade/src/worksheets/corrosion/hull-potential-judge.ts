import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import { type Criterion, type criteria, metalLeast, type Protection } from './hull-criteria.ts';

/** A reading as judged: mV against sea-water silver chloride. */
export interface Found {
  hull: keyof typeof criteria;
  range: Criterion;
  silver: number;
  state: Protection;
  /** How far the converted reading can be out, mV: the electrode's offset and the meter's last digit. */
  within: number;
  resolution: number;
  neededShift: number;
  metal?: keyof typeof metalLeast;
  rest?: number;
  /** How much more negative than at rest, mV. */
  shift?: number;
}

const mV = (value: number) => `${formatNumber(Math.round(value * 10) / 10, 5)} mV`;
const metalWords = { bronze: 'bronze', stainless: 'stainless steel', steel: 'steel', aluminium: 'aluminium' };

function judgeUnder(found: Found): Judgement {
  const { silver, range, within, metal, shift, neededShift } = found;
  const short = silver - range.from;
  const told = `The boat reads ${mV(silver)}, ${mV(short)} short of the ${mV(range.from)} where protection begins`;
  if (short <= within) {
    return { verdict: 'attention', reason: `${told}: no more than this electrode and meter can be out.` };
  }
  if (metal && silver <= metalLeast[metal]) {
    const reason = `${told}, but enough for its ${metalWords[metal]}, which needs ${mV(metalLeast[metal])}.`;
    return { verdict: 'attention', reason };
  }
  if (shift !== undefined && shift >= neededShift) {
    return {
      verdict: 'attention',
      reason: `${told}, though it is shifted enough from rest: the two tests differ.`,
    };
  }
  const leaves =
    range.restsAt !== undefined && silver > range.restsAt
      ? ' It is even less negative than the bare metal at rest: look for stray current, a bad contact or bonded bronze.'
      : '';
  return { verdict: 'unsatisfactory', reason: `${told}: the metal is corroding.${leaves}` };
}

function judgeOver({ silver, range, within }: Found): Judgement {
  const beyond = range.to - silver;
  const told = `The boat reads ${mV(silver)}, ${mV(beyond)} beyond the ${mV(range.to)} where protection becomes too much`;
  if (beyond <= within) {
    return { verdict: 'attention', reason: `${told}: no more than this electrode and meter can be out.` };
  }
  const harmful = range.harmFrom !== null && silver < range.harmFrom;
  return { verdict: harmful ? 'unsatisfactory' : 'attention', reason: `${told}: ${range.harm}.` };
}

function judgeMetal({ silver, metal, within }: Found): Judgement[] {
  if (!metal || silver <= metalLeast[metal]) return [];
  const short = silver - metalLeast[metal];
  const reason = `${mV(silver)} is ${mV(short)} short of the ${mV(metalLeast[metal])} that ${metalWords[metal]} needs.`;
  return [{ verdict: short <= within ? 'attention' : 'unsatisfactory', reason }];
}

/** Judges the potential against the range of the hull and the least value of its metal. */
export function judgePotential(found: Found): Judgement[] {
  const { silver, range, state, within } = found;
  const metal = judgeMetal(found);
  if (state === 'under') return [judgeUnder(found), ...metal];
  if (state === 'over') return [judgeOver(found), ...metal];
  const room = Math.min(range.from - silver, silver - range.to);
  const told = `The boat reads ${mV(silver)}, within ${mV(range.from)} to ${mV(range.to)}`;
  return [
    room < within && within > found.resolution
      ? {
          verdict: 'attention',
          reason: `${told}, but nearer to the limit than this electrode and meter can tell.`,
        }
      : { verdict: 'satisfactory', reason: `${told}: well protected.` },
    ...metal,
  ];
}

const aluminium: ReadonlyArray<keyof typeof criteria> = ['aluminium', 'fibreglass-aluminium-drive'];
/** Aluminium should not be pulled further than this below rest, mV. */
const mostAluminiumShift = 300;

/** Judges the shift from rest; the electrode's offset falls out, two readings' last digits stay. */
export function judgeShift({ hull, shift, neededShift, resolution }: Found): Judgement[] {
  if (shift === undefined) return [];
  const least = 2 * resolution;
  if (shift < -least) {
    const reason = `Connected, the metal is ${mV(-shift)} less negative than at rest: something draws current out of it. Look for stray current and for nobler metals bonded to it.`;
    return [{ verdict: 'unsatisfactory', reason }];
  }
  if (shift < neededShift) {
    const reason = `The metal is shifted ${mV(shift)} from rest; ${mV(neededShift)} are needed to protect it.`;
    return [{ verdict: 'attention', reason }];
  }
  if (aluminium.includes(hull) && shift > mostAluminiumShift) {
    const reason = `Aluminium is shifted ${mV(shift)} from rest; more than ${mV(mostAluminiumShift)} can harm it.`;
    return [{ verdict: 'attention', reason }];
  }
  const reason = `The metal is shifted ${mV(shift)} from rest; ${mV(neededShift)} protect it.`;
  return [{ verdict: 'satisfactory', reason }];
}
