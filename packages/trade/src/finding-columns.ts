/** A column of the sheet of findings that a survey can be brought in from. */
export interface FindingColumn {
  key: FindingColumnKey;
  /** As we write it; any case, order and punctuation is read. */
  heading: string;
  /** Other headings under which it is understood. */
  also: readonly string[];
  /** What belongs into it, for people. */
  holds: string;
  /** A cell of the sample. */
  example: string;
}

export type FindingColumnKey =
  | 'title'
  | 'system'
  | 'observed'
  | 'consequence'
  | 'recommendation'
  | 'urgency'
  | 'days'
  | 'dueBy'
  | 'location'
  | 'side'
  | 'along'
  | 'height'
  | 'harms'
  | 'standards'
  | 'photos'
  | 'items'
  | 'catalogueKey'
  | 'catalogueVersion'
  | 'costFrom'
  | 'costTo'
  | 'currency'
  | 'costBasis'
  | 'costNote'
  | 'severity'
  | 'probability';

const column = (
  key: FindingColumnKey,
  heading: string,
  also: readonly string[],
  holds: string,
  example = '',
): FindingColumn => ({ key, heading, also, holds, example });

/** Every column that is understood, in the order of the sample. The first line of the file holds the headings. */
export const findingColumns: readonly FindingColumn[] = [
  column(
    'title',
    'Title',
    ['finding', 'heading', 'defect'],
    'What a person would say on the telephone. Needed, unless a catalogue key is given',
    'Gas locker drain is blocked',
  ),
  column(
    'system',
    'System',
    ['area', 'group'],
    'The part of the boat, by its name in the portal or its key. Needed',
    'Gas (LPG)',
  ),
  column(
    'observed',
    'What was seen',
    ['observed', 'observation', 'seen', 'description'],
    'What was seen, where and how much; paragraphs are kept',
    'Water stands 40 mm deep in the locker. The drain is filled with sealant.',
  ),
  column(
    'consequence',
    'Why it matters',
    ['consequence', 'risk', 'reason'],
    'What may come of it',
    'Gas that leaks can’t run overboard and gathers in the cockpit.',
  ),
  column(
    'recommendation',
    'What to do',
    ['recommendation', 'recommended', 'action', 'remedy'],
    'How to put it right',
    'Clear the drain and prove it by pouring water.',
  ),
  column(
    'urgency',
    'Urgency',
    ['when', 'priority'],
    'Before use, within days (or: within 30 days), next lay-up, note. Needed',
    'Before use',
  ),
  column('days', 'Days', ['within days'], 'How many days, with the urgency “within days”'),
  column('dueBy', 'Due by', ['due', 'due date', 'due on'], 'A last day set by hand, as 2027-03-31'),
  column(
    'location',
    'Location',
    ['where', 'place on board'],
    'Where on the boat, in words; goes to the end of what was seen',
    'Cockpit, starboard locker',
  ),
  column('side', 'Side', [], 'port, centre or starboard, for the mark on the outline', 'starboard'),
  column(
    'along',
    'From stem',
    ['along'],
    'How far aft of the stem, from 0 (stem) to 1 (stern), or in per cent',
    '0.8',
  ),
  column(
    'height',
    'Above keel',
    ['height'],
    'How high, from 0 (keel) to 1 (deck or masthead), or in per cent',
    '0.9',
  ),
  column('harms', 'Harms', ['harm'], 'Kinds of harm, separated by ;', 'Fire or explosion; Poisoning'),
  column(
    'standards',
    'Standards',
    ['standard', 'references', 'reference'],
    'Designations, separated by ; or one a line',
    'ISO 10239',
  ),
  column(
    'photos',
    'Photos',
    ['photo', 'pictures', 'images', 'files'],
    'File names, with or without folder, separated by ; or one a line',
    'IMG_0412.jpg; IMG_0413.jpg',
  ),
  column('items', 'Items', ['to be done'], 'Things to be put right one by one, one a line or separated by ;'),
  column(
    'catalogueKey',
    'Catalogue key',
    ['catalogue', 'known defect'],
    'The known defect it begins from; alone, it brings its words',
  ),
  column('catalogueVersion', 'Catalogue version', [], 'The version of that entry; usually left empty'),
  column('costFrom', 'Cost from', ['cost', 'cost low'], 'What it may cost at least, such as 1250 or 1250.50'),
  column('costTo', 'Cost to', ['cost high'], 'What it may cost at most; the same when empty'),
  column('currency', 'Currency', [], 'Three letters, such as EUR'),
  column('costBasis', 'Cost basis', [], 'opinion or quotation; opinion when empty'),
  column('costNote', 'Cost note', [], 'Such as whose quotation'),
  column('severity', 'Severity', [], 'Category 1 to 4'),
  column('probability', 'Probability', [], 'Level A to F'),
];

/** Headings that our own sheets of rows left out carry; they say nothing about a finding. */
export const reasonHeadings = ['Line', 'What is wrong'] as const;

/** A heading or a word as it is compared: without case, accents and punctuation. */
export const plainWord = (word: string): string =>
  word
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

const byWord = new Map(
  findingColumns.flatMap(({ key, heading, also }) =>
    [heading, key, ...also].map((word) => [plainWord(word), key] as const),
  ),
);

/** The column that a heading names, or null for one we don't know. */
export const columnOf = (heading: string): FindingColumnKey | null => byWord.get(plainWord(heading)) ?? null;

/** The heading under which we write a column. */
export const headingOf = (key: FindingColumnKey): string =>
  findingColumns.find((one) => one.key === key)?.heading ?? key;
