import {
  anyWhole,
  type Counted,
  countExtinguishers,
  countSignals,
  extinguishersNeeded,
  signalsNeeded,
} from './carriage-count.ts';
import type { Checked, Inputs } from './carriage-inputs.ts';

/** One thing the law asks for, and what was found of it. */
export interface Requirement {
  item: string;
  required: string;
  found: string;
  state: 'met' | 'missing' | 'unknown';
  rule: string;
  /** Why found things don't count. */
  notes: string[];
}

type Plain = Omit<Requirement, 'notes' | 'state' | 'found'>;

const stateOf = { yes: 'met', no: 'missing', 'not-examined': 'unknown' } as const;
const foundText = { yes: 'on board', no: 'none, or not in order', 'not-examined': 'not examined' } as const;

const ticked = (about: Plain, answer: Checked): Requirement => ({
  ...about,
  state: stateOf[answer],
  found: foundText[answer],
  notes: [],
});

function counted(
  about: Plain,
  needed: number,
  { sure, possible, notes }: Omit<Counted, 'soon'>,
): Requirement {
  const state = sure >= needed ? 'met' : possible >= needed ? 'unknown' : 'missing';
  const found = possible > sure ? `${sure} found, ${possible - sure} more not certain` : `${sure} found`;
  return { ...about, state, found, notes: state === 'met' ? [] : notes };
}

const exactly = (number: number) => ({ sure: number, possible: number, notes: [] });
const when = (condition: boolean, requirement: () => Requirement): Requirement[] =>
  condition ? [requirement()] : [];

/** Life jackets and throwable devices asked for. */
export function lifeSavingNeeded(v: Inputs): { wearable: number; throwable: number } {
  if (v.craft === 'racing' || v.craft === 'sailboard') return { wearable: 0, throwable: 0 };
  const throwable = v.length.in('ft') >= 16 && v.craft !== 'canoe' ? 1 : 0;
  return { wearable: v.persons, throwable };
}

function lifeSaving(v: Inputs): Requirement[] {
  const { wearable, throwable } = lifeSavingNeeded(v);
  const rule = '33 CFR 175.15';
  return [
    ...when(wearable > 0, () =>
      counted(
        { item: 'Life jackets to wear', required: String(wearable), rule },
        wearable,
        exactly(v.wearable),
      ),
    ),
    ...when(throwable > 0, () =>
      counted({ item: 'Throwable device', required: '1', rule: `${rule}(b)` }, 1, exactly(v.throwable)),
    ),
  ];
}

function signals(v: Inputs): Requirement[] {
  const needed = signalsNeeded(v);
  const ask = (time: 'day' | 'night') =>
    counted(
      {
        item: `Distress signals for the ${time}`,
        required: '1 set',
        rule: '33 CFR 175.110, 175.125, 175.130',
      },
      1,
      countSignals(v, time),
    );
  return [...when(needed.day, () => ask('day')), ...when(needed.night, () => ask('night'))];
}

function fire(v: Inputs): Requirement[] {
  const { units, large, engineSpace } = extinguishersNeeded(v);
  return [
    ...when(units > 0, () =>
      counted(
        { item: 'Fire extinguishers', required: `${units} of 5-B`, rule: '33 CFR 175.320(a), 175.380' },
        units,
        countExtinguishers(v),
      ),
    ),
    ...when(large + engineSpace > 0, () =>
      counted(
        {
          item: 'Fire extinguishers',
          required: `${large} of 20-B, and ${engineSpace} in the engine space`,
          rule: '33 CFR 175.320(b)',
        },
        large + engineSpace,
        countExtinguishers(v, true),
      ),
    ),
    ...when(large > 0 && (v.grossTons ?? 0) > 300, () =>
      ticked(
        {
          item: 'Fixed or 160-B semi-portable system',
          required: '1 in the engine space',
          rule: '33 CFR 175.320(b)(2)(ii)',
        },
        v.fixedSystem,
      ),
    ),
    ...when(v.engine === 'inboard-petrol', () =>
      ticked(
        { item: 'Backfire flame control', required: 'on each engine', rule: '46 CFR 25.35-1' },
        v.flameControl,
      ),
    ),
  ];
}

/** The lights of rules 23 and 25, as words and as sets of which one must be whole. */
export function lightsNeeded(v: Inputs): { words: string; sets: Checked[][] } {
  const metres = v.length.in('m');
  const sailing = [v.sidelights, v.sternLight];
  if (v.engine !== 'none') {
    const full = [v.mastheadLight, v.sidelights, v.sternLight];
    return metres < 12
      ? {
          words: 'sidelights, and masthead light with sternlight or an all-round white light',
          sets: [full, [v.sidelights, v.allRoundLight]],
        }
      : { words: 'masthead light, sidelights, sternlight', sets: [full] };
  }
  const underSail = v.craft === 'sail' || v.craft === 'open-sail' || v.craft === 'sailboard';
  return underSail && metres >= 7
    ? { words: 'sidelights, sternlight', sets: [sailing] }
    : {
        words: 'sidelights and sternlight, an all-round white light, or a torch at hand',
        sets: [sailing, [v.allRoundLight], [v.torch]],
      };
}

function rulesOfTheRoad(v: Inputs): Requirement[] {
  const metres = v.length.in('m');
  const lights = lightsNeeded(v);
  return [
    ...when(v.night, () =>
      ticked(
        { item: 'Navigation lights', required: lights.words, rule: '33 CFR 83.23, 83.25' },
        anyWhole(...lights.sets),
      ),
    ),
    ticked(
      {
        item: 'Sound signal',
        required: metres < 12 ? 'a means of an efficient sound' : 'whistle',
        rule: '33 CFR 83.33',
      },
      v.soundSignal,
    ),
    ...when(metres >= 20, () =>
      ticked({ item: 'Bell', required: 'with the whistle', rule: '33 CFR 83.33(a)' }, v.bell),
    ),
    ...when(metres >= 12 && v.engine !== 'none', () =>
      ticked({ item: 'Inland Navigation Rules', required: 'a copy', rule: '33 CFR 83.01(g)' }, v.rulesBook),
    ),
  ];
}

/** Whether a written garbage plan is asked for. */
export const garbagePlanNeeded = (v: Inputs): boolean =>
  v.length.in('ft') >= 40 && v.waters === 'ocean' && v.galleyAndBerths;

function pollution(v: Inputs): Requirement[] {
  const feet = v.length.in('ft');
  return [
    ...when(feet >= 26 && v.engine !== 'none', () =>
      ticked(
        { item: 'Placard on oil', required: '1, at least 5 × 8 in', rule: '33 CFR 155.450' },
        v.oilPlacard,
      ),
    ),
    ...when(feet >= 26, () =>
      ticked(
        { item: 'Placard on garbage', required: '1, at least 8 × 5 in', rule: '33 CFR 151.51(e), 151.59' },
        v.garbagePlacard,
      ),
    ),
    ...when(garbagePlanNeeded(v), () =>
      ticked(
        { item: 'Garbage management plan', required: 'written', rule: '33 CFR 151.51(d), 151.57' },
        v.garbagePlan,
      ),
    ),
    ...when(v.toilet !== 'none', () => sanitation(v)),
  ];
}

function sanitation(v: Inputs): Requirement {
  const long = v.length.in('ft') > 65;
  const about = {
    item: 'Sanitation device',
    required: long ? 'type II or III' : 'type I, II or III',
    rule: '33 CFR 159.7(a)',
  };
  if (v.toilet === 'no-device') return { ...ticked(about, 'no'), found: 'none' };
  if (v.toilet === 'type-1' && long) {
    return { ...ticked(about, 'no'), found: 'type I', notes: ['type I is for 65 ft and less'] };
  }
  return ticked(about, v.deviceWorks);
}

/** Everything the law asks of this boat, in the order of a walk through the inventory. */
export const requirements = (v: Inputs): Requirement[] => [
  ...lifeSaving(v),
  ...signals(v),
  ...fire(v),
  ...rulesOfTheRoad(v),
  ...pollution(v),
];
