import type { Urgency } from './vocabulary.ts';

// The words that every report has in common, in print and on the screen.

/** How to read a finding. */
export const howToRead =
  'Each finding says what was seen, why it matters and what to do. Its urgency stands beside it, in words and as an upright gauge: the fuller the gauge, the less it can wait.';

/** What each urgency asks of the owner. */
export const urgencyMeanings: Readonly<Record<Urgency, string>> = {
  'before-use':
    'The vessel should not be used until this has been put right. Nothing here should wait for another job.',
  'within-days': 'Put this right within the number of days stated, counted from the day of issue.',
  'next-layup': 'This can wait until the vessel is next hauled out or laid up, but not longer.',
  note: 'Nothing has to be done. The owner should know it, or keep an eye on it.',
};

/** What the reader must keep in mind before acting on the report. */
export const beforeActing: readonly string[] = [
  'Gas, mains electricity, fuel, fire-fighting, structural and rigging work can kill when done badly. Have it done by people qualified, and where the law asks for it licensed, for that trade.',
  'Local codes, the flag state’s rules and the makers’ current instructions come before anything recommended here. Where they differ from this report, follow them and tell the surveyor.',
  'A finding describes what could be seen on the days of attendance. Opening up may show more; ask before the work is closed again.',
  'Urgencies are the surveyor’s opinion of the vessel as it was used and kept when seen. Heavier use or a longer wait can make a finding more urgent.',
];

const terms: readonly (readonly [string, string])[] = [
  ['Afloat', 'The vessel lay in the water, at a berth, mooring or anchor. Her bottom was not seen.'],
  ['Ashore', 'The vessel stood or hung out of the water and her bottom could be seen.'],
  ['Under way', 'The vessel was under her own power or sail during the attendance.'],
  [
    'Clearing',
    'Evidence of the work is sent and whoever the survey names decides that nothing more is asked.',
  ],
  [
    'Accepted as it is',
    'The one who decides accepts the condition without the recommended work, within stated limits.',
  ],
  ['Finding', 'Something seen that the owner, buyer or insurer should know.'],
  ['Recommendation', 'What the surveyor advises to do about a finding, and by when.'],
  ['Haul-out or lay-up', 'The next time the vessel is taken out of the water or out of use for upkeep.'],
  ['Put right', 'Repaired, replaced, adjusted or removed so that the condition described is gone.'],
  ['Examined in part', 'Some of the system could be seen or tried; the report says what could not, and why.'],
  ['Not reached', 'Nothing of the system could be seen or tried, so its condition is unknown.'],
  ['Length overall', 'From the foremost to the aftermost part of the hull, without removable fittings.'],
  ['Draught', 'From the waterline to the lowest point, as stated for the vessel in normal trim.'],
];

/** Words of the report with a meaning of their own, by the alphabet. */
export const reportTerms = [...terms].sort(([a], [b]) => a.localeCompare(b, 'en'));

/** What the surveyor states about a report. @param about which report, such as `survey 2026-0042 revision 2` */
export function surveyorsStatement(said: {
  vessel: string;
  /** The days of attendance in words; empty when there was none. */
  days: string;
  about: string;
  withValue: boolean;
}): string[] {
  const { vessel, days, about, withValue } = said;
  return [
    `I attended ${vessel}${days && ` on ${days}`} and this report, ${about}, states truly what I saw within its scope and limitations. The opinions in it are my own.`,
    'I have no interest in the vessel, its sale or its insurance, and my fee does not depend on what I found. The report is for the person it was prepared for and those it was released to; it describes the vessel’s condition when seen and is not a warranty of it.',
    ...(withValue
      ? [
          'The value stated is my opinion at the date of the survey. It was not set by anybody else, and nothing was promised for reaching it.',
        ]
      : []),
  ];
}
