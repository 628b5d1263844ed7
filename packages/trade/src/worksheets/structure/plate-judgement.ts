import { settle } from '../core/units.ts';
import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import { doubtAbout, lossOf, type Statistics, statisticsOf } from './plate-arithmetic.ts';

/** Limits in mm and per cent. */
export interface PlateLimits {
  renewalLoss: number;
  localLoss: number;
  substantialShare: number;
  leastThickness: number | undefined;
  leftUnderPit: number;
  pittedShare: number;
  readingsPerPlate: number;
  allowance: number;
  gaugeStep: number;
}

/** One plate as gauged, in mm and per cent. */
export interface GaugedPlate {
  name: string;
  original: number;
  pitDepth: number | undefined;
  pitted: number | undefined;
  readings: number[];
}

export interface JudgedPlate extends GaugedPlate {
  /** Readings that count, and those that can't be true with the reason. */
  usable: number[];
  doubtful: Array<{ reading: number; why: string }>;
  statistics: Statistics | undefined;
  meanLoss: number | undefined;
  greatestLoss: number | undefined;
  /** What may be left under the deepest pit: the least reading less its depth, mm. */
  underPit: number | undefined;
  judgements: Judgement[];
  /** What is to be done, for the renewal list. */
  work: string[];
}

const mm = (value: number) => `${formatNumber(value, 3)} mm`;
const per = (value: number) => `${formatNumber(value, 3)}%`;

/** Judges one plate by the limits. */
export function judgePlate(plate: GaugedPlate, limits: PlateLimits): JudgedPlate {
  const doubts = plate.readings.map((reading) => ({
    reading,
    why: doubtAbout(reading, plate.original, limits.allowance),
  }));
  const usable = doubts.flatMap(({ reading, why }) => (why === undefined ? [reading] : []));
  const statistics = usable.length > 0 ? statisticsOf(usable) : undefined;
  const judged: JudgedPlate = {
    ...plate,
    usable,
    doubtful: doubts.flatMap(({ reading, why }) => (why === undefined ? [] : [{ reading, why }])),
    statistics,
    meanLoss: statistics && lossOf(plate.original, statistics.mean),
    greatestLoss: statistics && lossOf(plate.original, statistics.least),
    underPit:
      statistics && plate.pitDepth !== undefined
        ? Math.max(0, settle(statistics.least - plate.pitDepth))
        : undefined,
    judgements: [],
    work: [],
  };
  judgeReadings(judged, limits);
  judgeLoss(judged, limits);
  judgePits(judged, limits);
  return judged;
}

function judgeReadings({ name, usable, doubtful, judgements }: JudgedPlate, limits: PlateLimits): void {
  if (usable.length < limits.readingsPerPlate) {
    const reason = `Plate ${name}: ${formatNumber(usable.length)} usable reading${usable.length === 1 ? '' : 's'} and ${limits.readingsPerPlate} are needed to judge it.`;
    judgements.push({ verdict: 'indeterminate', reason });
  }
  if (doubtful.length > 0) {
    const worst = doubtful.reduce((most, { reading }) => Math.max(most, reading), 0);
    const reason = `Plate ${name}: ${formatNumber(doubtful.length)} doubtful reading${doubtful.length === 1 ? '' : 's'} (up to ${mm(worst)}) left out; gauge again through bare metal or by echo to echo.`;
    judgements.push({ verdict: 'attention', reason });
  }
}

function judgeLoss(plate: JudgedPlate, limits: PlateLimits): void {
  const { name, statistics, meanLoss, greatestLoss, judgements, work } = plate;
  if (!statistics || meanLoss === undefined || greatestLoss === undefined) return;
  if (limits.leastThickness !== undefined && statistics.least < limits.leastThickness) {
    const reason = `Plate ${name}: ${mm(statistics.least)} at its thinnest, less than the ${mm(limits.leastThickness)} asked for.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
    work.push(`thinner than ${mm(limits.leastThickness)}`);
  }
  if (statistics.count < limits.readingsPerPlate) return;
  const step = (100 * limits.gaugeStep) / plate.original;
  if (meanLoss > limits.renewalLoss) {
    const reason = `Plate ${name} has lost ${per(meanLoss)} of its original ${mm(plate.original)} on average, more than the ${per(limits.renewalLoss)} allowed.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
    work.push(`mean loss ${per(meanLoss)}`);
  } else if (settle(meanLoss + step) > limits.renewalLoss) {
    const reason = `Plate ${name} has lost ${per(meanLoss)} on average: within one step of the gauge of the ${per(limits.renewalLoss)} allowed.`;
    judgements.push({ verdict: 'attention', reason });
  } else if (meanLoss > (limits.substantialShare * limits.renewalLoss) / 100) {
    const reason = `Plate ${name} has lost ${per(meanLoss)} on average: substantial corrosion, more than ${per(limits.substantialShare)} of the loss allowed.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (greatestLoss > limits.localLoss) {
    const reason = `Plate ${name} has lost ${per(greatestLoss)} at one reading (${mm(statistics.least)}), more than ${per(limits.localLoss)}: gauge round it and look for what weakens it.`;
    judgements.push({ verdict: 'attention', reason });
  }
}

function judgePits(plate: JudgedPlate, limits: PlateLimits): void {
  const { name, original, pitDepth, pitted, underPit, judgements, work } = plate;
  if (pitted !== undefined && pitted > limits.pittedShare && pitDepth === undefined) {
    const reason = `Plate ${name}: ${per(pitted)} of its surface is pitted, more than ${per(limits.pittedShare)}; measure its deepest pits.`;
    judgements.push({ verdict: 'indeterminate', reason });
  }
  if (underPit === undefined || pitDepth === undefined) return;
  const left = settle((100 * underPit) / original);
  const extensive = (pitted ?? 0) > 25 && pitDepth > original / 2;
  if (limits.leastThickness !== undefined && underPit < limits.leastThickness) {
    const reason = `Plate ${name}: ${mm(underPit)} may be left under its deepest pit, less than the ${mm(limits.leastThickness)} asked for.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
    work.push(`${mm(underPit)} under a pit`);
  } else if (left <= limits.leftUnderPit) {
    const reason = `Plate ${name}: ${mm(underPit)} may be left under its deepest pit, ${per(left)} of the original; it should be more than ${per(limits.leftUnderPit)}.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
    work.push(`${per(left)} left under a pit`);
  }
  if (extensive) {
    const reason = `Plate ${name}: pits deeper than half the original over more than a quarter of the surface call for new plate, not for filling.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
    work.push('extensive deep pitting');
  }
}
