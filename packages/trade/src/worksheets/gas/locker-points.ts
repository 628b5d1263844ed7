import type { CheckedPoint } from './checked-points.ts';

type Answer = CheckedPoint['answer'];

/** The answers of a locker's checklist. */
export interface LockerAnswers {
  vapourTight: Answer;
  opensTop: Answer;
  gasketLatch: Answer;
  passagesSealed: Answer;
  drainLowest: Answer;
  drainFalls: Answer;
  drainClear: Answer;
  nothingElse: Answer;
  secured: Answer;
  noIgnition: Answer;
}

/**
 * What each answer means.
 * @param gasket whether the rule asks for a gasket and latch; otherwise their want is worth attention only
 */
export function lockerPoints(v: LockerAnswers, gasket: boolean): CheckedPoint[] {
  return [
    {
      answer: v.vapourTight,
      what: 'whether the locker is vapour-tight',
      bad: 'The locker is not vapour-tight: gas can reach the inside of the boat.',
    },
    {
      answer: v.passagesSealed,
      what: 'whether pipes are sealed at the wall',
      bad: 'A pipe or hose passes the locker’s wall unsealed: gas can reach the inside of the boat.',
    },
    {
      answer: v.opensTop,
      what: 'how the locker opens',
      bad: 'The locker does not open only at the top to the open air: gas can spill where it opens.',
    },
    {
      answer: v.drainFalls,
      what: 'the run of the drain',
      bad: 'The drain has a dip or ends above the locker’s bottom: water or height holds the gas back.',
    },
    {
      answer: v.drainClear,
      what: 'whether the drain is clear',
      bad: 'The drain is blocked, damaged or loose.',
    },
    {
      answer: v.drainLowest,
      what: 'where the drain starts',
      bad: 'The drain does not start at the lowest point: gas stays below it.',
    },
    {
      answer: v.noIgnition,
      what: 'whether anything in the locker can spark',
      bad: 'Something in the locker can spark and light the gas.',
    },
    {
      answer: v.secured,
      what: 'how the cylinders are secured',
      bad: 'Cylinders are not upright and secured.',
    },
    {
      answer: v.nothingElse,
      what: 'what is stowed in the locker',
      bad: 'Loose gear in the locker can block the drain or damage a valve.',
      grave: 'attention',
    },
    {
      answer: v.gasketLatch,
      what: 'the lid’s gasket and latch',
      bad: 'The lid wants a gasket or a latch.',
      grave: gasket ? 'unsatisfactory' : 'attention',
    },
  ];
}
