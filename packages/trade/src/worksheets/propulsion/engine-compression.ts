import { Quantity } from '../core/quantity.ts';
import { isBelow, settle } from '../core/units.ts';
import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import type { EngineValues } from './engine-readings-inputs.ts';
import { compressionRuleOf, typicalPsi } from './engine-rules-table.ts';

/** One cylinder's readings and what they are short of; psi. */
export interface Cylinder {
  name: string;
  dry: number;
  wet?: number;
  low: boolean;
}

/** Compression of an engine against a rule; psi and per cent. */
export interface Compression {
  cylinders: Cylinder[];
  highest: number;
  lowest: number;
  difference: number;
  /** `100 (highest − lowest) / highest` */
  spread: number;
  /** Lowest of the highest, per cent. */
  share: number;
  /** Least reading accepted beside the highest one, and by itself. */
  leastBeside?: number;
  leastAlone?: number;
  wornBelow?: number;
  /** Least reading accepted, whichever asks more. */
  least?: number;
  division: number;
}

/** A rise with oil of more than this share of the dry reading tells of rings or bore: common practice. */
const wetRise = 0.1;

function limitsOf(v: EngineValues, highest: number) {
  if (v.rule === 'manual') {
    return {
      beside: v.manualDifference && settle(highest - v.manualDifference.in('psi')),
      alone: v.manualLeast?.in('psi'),
    };
  }
  const rule = compressionRuleOf(v.rule);
  const petrol = v.fuel === 'petrol';
  return {
    beside: settle(highest * rule.leastShare),
    alone: petrol ? rule.leastPsi : undefined,
    worn: petrol ? rule.wornBelowPsi : undefined,
  };
}

/** The compression readings, if there are any. */
export function compressionOf(v: EngineValues): Compression | undefined {
  const rows = v.cylinders ?? [];
  if (rows.length === 0) return undefined;
  const dry = rows.map((row) => row.dry.in('psi'));
  const highest = Math.max(...dry);
  const lowest = Math.min(...dry);
  const { beside, alone, worn } = limitsOf(v, highest);
  const limits = [beside, alone].filter((limit) => limit !== undefined);
  const least = limits.length > 0 ? Math.max(...limits) : undefined;
  return {
    cylinders: rows.map((row, i) => ({
      name: row.name ?? String(i + 1),
      dry: dry[i] as number,
      ...(row.wet ? { wet: row.wet.in('psi') } : {}),
      low: least !== undefined && isBelow(dry[i] as number, least),
    })),
    highest,
    lowest,
    difference: settle(highest - lowest),
    spread: settle((100 * (highest - lowest)) / highest),
    share: settle((100 * lowest) / highest),
    ...(beside === undefined ? {} : { leastBeside: beside }),
    ...(alone === undefined ? {} : { leastAlone: alone }),
    ...(worn === undefined ? {} : { wornBelow: worn }),
    ...(least === undefined ? {} : { least }),
    division: v.gaugeResolution.in('psi'),
  };
}

/** A pressure in psi, in the unit of the surveyor's gauge. */
export const pressureText = (v: EngineValues, psi: number): string =>
  new Quantity(psi, 'psi').to(v.cylinders?.[0]?.dry.unit ?? 'psi').text(4);

const list = (names: string[]) =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

function wetWords(v: EngineValues, cylinders: readonly Cylinder[]): string {
  return cylinders
    .flatMap(({ name, dry, wet }) => {
      if (wet === undefined) return [];
      const from = `Cylinder ${name} went from ${pressureText(v, dry)} to ${pressureText(v, wet)} with oil`;
      return wet - dry > wetRise * dry
        ? [` ${from}: rings or bore.`]
        : [` ${from}: the oil hardly helped, so valves or head gasket.`];
    })
    .join('');
}

function neighbours(cylinders: readonly Cylinder[]): string {
  const i = cylinders.findIndex((cylinder, k) => cylinder.low && cylinders[k + 1]?.low);
  return i < 0 || cylinders.every((cylinder) => cylinder.low)
    ? ''
    : ` ${cylinders[i]?.name} and ${cylinders[i + 1]?.name} stand side by side: look at the head gasket between them.`;
}

/** What the compression readings say. */
export function judgeCompression(v: EngineValues, c: Compression): Judgement[] {
  const judgements: Judgement[] = [];
  const has = `The lowest cylinder reads ${pressureText(v, c.lowest)} and the highest ${pressureText(v, c.highest)}, a spread of ${formatNumber(c.spread, 3)}%`;
  const low = c.cylinders.filter((cylinder) => cylinder.low);
  if (c.cylinders.length < 2 && c.leastAlone === undefined) {
    const reason = `One cylinder reads ${pressureText(v, c.lowest)}: with nothing to compare it with, the manual’s least compression is needed to judge it.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  if (low.length > 0 && c.least !== undefined) {
    const which =
      low.length === 1 ? `cylinder ${low[0]?.name} is` : `cylinders ${list(low.map((x) => x.name))} are`;
    const reason = `${has}; ${which} below the ${pressureText(v, c.least)} asked.${wetWords(v, low)}${neighbours(c.cylinders)}`;
    judgements.push({ verdict: 'unsatisfactory', reason });
  } else {
    const asked = c.least === undefined ? '' : `; ${pressureText(v, c.least)} is asked at least`;
    judgements.push({ verdict: 'satisfactory', reason: `${has}${asked}.` });
  }
  // A division of the gauge moves the lowest reading and, through the highest, the limit beside it.
  if (c.least !== undefined && Math.abs(c.lowest - c.least) < c.division) {
    const reason = `The lowest cylinder is within one division of the gauge (${pressureText(v, c.division)}) of the least asked: repeat with a finer gauge.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (c.wornBelow !== undefined && c.highest < c.wornBelow) {
    const reason = `Every cylinder is below ${pressureText(v, c.wornBelow)}: even readings as low as this are a sign of general wear.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (c.leastAlone === undefined && c.highest < typicalPsi[v.fuel][0]) {
    const [from, to] = typicalPsi[v.fuel];
    const reason = `Even the highest cylinder is below the ${pressureText(v, from)} to ${pressureText(v, to)} typical of such engines; the manual’s least compression decides whether all are worn.`;
    judgements.push({ verdict: 'attention', reason });
  }
  return judgements;
}
