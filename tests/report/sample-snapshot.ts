import type {
  LetterSnapshot,
  SnapshotClearance,
  SnapshotEquipment,
  SnapshotFinding,
  SnapshotPhoto,
  SurveyReportSnapshot,
} from '@garboard/contract/report-snapshot';
import { systems, urgencies } from '@garboard/trade/vocabulary';

/** A UUID made from a number, so that samples are the same in each run. */
export function sampleId(n: number): string {
  return `0199f2a4-7b1e-7c40-9a51-${n.toString(16).padStart(12, '0')}`;
}

export function samplePhoto(n: number, caption = `View ${n} of the fitting`): SnapshotPhoto {
  const upright = n % 5 === 0;
  return {
    id: sampleId(1_000_000 + n),
    caption,
    width: upright ? 900 : 1200,
    height: upright ? 1200 : 900,
    takenAt: '2026-05-04T09:30:00Z',
  };
}

/** What a finding has before anything came of it. */
export const unmoved = {
  items: [],
  dueOnSet: null,
  dueStated: false,
  limit: null,
  extensions: [],
  withdrawal: null,
  evidence: [],
} satisfies Partial<SnapshotFinding>;

/** Evidence that an insurer accepted. */
export function sampleClearance(change: Partial<SnapshotClearance> = {}): SnapshotClearance {
  return {
    statement: 'Hose renewed, test sheet attached.',
    workDoneBy: 'Arlen Gas Fitters',
    workDoneOn: '2026-05-20',
    decision: 'accept',
    decidedByName: 'P. Vane',
    decidedByRole: 'insurer',
    decidedAt: '2026-05-22T10:00:00Z',
    reason: null,
    limit: null,
    limitUntil: null,
    items: [],
    sentByName: 'O. Rell',
    sentByRole: 'owner',
    sentAt: '2026-05-20T16:00:00Z',
    photos: 0,
    documents: [],
    worksheet: null,
    ...change,
  };
}

const seen =
  'The flexible hose between the regulator and the cooker has hardened, and its cover is cracked over 40 mm where it passes through the bulkhead without a grommet. The date printed on it is 2009.';

export function sampleFinding(number: number, change: Partial<SnapshotFinding> = {}): SnapshotFinding {
  const urgency = urgencies[(number * 7) % urgencies.length] ?? 'note';
  const withinDays = urgency === 'within-days' ? 30 + (number % 3) * 30 : null;
  return {
    id: sampleId(number),
    number,
    system: systems[(number * 3) % systems.length] ?? 'hull',
    title: `Hardened and chafed hose behind panel ${number}`,
    observed:
      number % 2 === 0 ? seen : `${seen}\n\nA drop test over three minutes showed no loss at the gauge.`,
    consequence: 'A hose in this condition can leak where the gas gathers in the bilge unseen.',
    recommendation:
      'Replace the hose by one marked for this gas and pressure, sleeve it in the bulkhead, and have the installation tested by a licensed gas fitter before use.',
    urgency,
    withinDays,
    dueOn:
      urgency === 'before-use'
        ? '2026-05-06'
        : withinDays === null
          ? null
          : `2026-0${5 + withinDays / 30}-05`,
    harms: ['fire-explosion', 'poisoning'],
    references: ['ISO 10239:2014, 8.3'],
    photos: [],
    state: 'open',
    clearance: null,
    cost: null,
    catalogueKey: null,
    position: null,
    ...unmoved,
    ...change,
  };
}

const common = {
  schemaVersion: 1,
  preview: false,
  revision: 1,
  frozenAt: '2026-05-06T23:30:00Z',
  language: 'en',
  timeZone: 'Europe/Lisbon',
  paper: 'A4',
  measures: 'both',
  present: ['M. Ardley, prospective buyer', 'R. Tesk, Arlen Boatyard, for the haul-out'],
  verification: null,
  revisions: [],
  changes: null,
  firm: {
    name: 'Tallow & Strake Marine Surveyors',
    addressLines: ['3 Slip Lane', 'Port Arlen'],
    email: 'office@tallowstrake.example',
    phone: '+000 555 0100',
  },
  surveyor: { name: 'Ines Quorn', qualifications: 'Surveyor of small craft' },
  survey: {
    id: sampleId(9),
    number: '2026-0042',
    purpose: 'pre-purchase',
    requestedBy: 'M. Ardley, prospective buyer',
    scope:
      'Hull, deck, machinery and systems as far as they could be reached.\n\nA trial under way was included.',
    limitations: 'The keel bolts were not drawn. Linings were not removed.',
    clearanceDecidedBy: 'insurer',
    printCosts: false,
  },
  vessel: {
    name: 'Grey Wagtail',
    hullNumber: 'XX-TSB00042C626',
    officialNumber: null,
    builder: 'Arlen Boatworks',
    model: 'Fulmar 38',
    yearBuilt: 1998,
    hullMaterial: 'grp',
    propulsion: 'inboard-diesel',
    lengthOverallM: 11.58,
    beamM: 3.61,
    draftM: 1.83,
    displacementKg: 7438,
    homePort: 'Port Arlen',
    flag: null,
  },
  attendances: [
    { date: '2026-05-04', place: 'Arlen Boatyard', condition: 'ashore' },
    { date: '2026-05-05', place: 'Port Arlen marina', condition: 'under-way' },
  ],
} satisfies Partial<SurveyReportSnapshot>;

/** A full report with so many findings, so many photos each. */
export function sampleReport(findings: number, photosEach = 0): SurveyReportSnapshot {
  return {
    // Tests write into theirs.
    ...structuredClone(common),
    kind: 'full',
    leadPhoto: photosEach > 0 ? samplePhoto(1, 'At her berth') : null,
    worksheets: [],
    coverage: [],
    inventory: [],
    hullNumberDecoded: null,
    catalogue: {},
    findings: Array.from({ length: findings }, (_, index) =>
      sampleFinding(index + 1, {
        photos: Array.from({ length: photosEach }, (_, photo) => samplePhoto(index * photosEach + photo + 1)),
      }),
    ),
  };
}

/** Equipment of several systems: two expired on the day of the sample report, one on its last day. */
export function sampleEquipment(): SnapshotEquipment[] {
  const none = {
    maker: null,
    serialNumber: null,
    place: null,
    count: 1,
    madeOn: null,
    expiresOn: null,
    note: '',
  };
  const named = [
    {
      ...{ system: 'life-saving', name: 'Liferaft', maker: 'Ebbtide Safety', serialNumber: 'DX-0041' },
      ...{ place: 'Cockpit locker to starboard', madeOn: '2019-03-01', expiresOn: '2026-05-07' },
    },
    { system: 'life-saving', name: 'Red hand flares', count: 6, expiresOn: '2026-05-06' },
    { system: 'gas', name: 'Gas hose', serialNumber: 'marked 05/21', expiresOn: '2021-05-31' },
    { system: 'rig-sails', name: 'Standing rigging', madeOn: '2010-03-01', note: 'As told by the owner.' },
  ] satisfies (Pick<SnapshotEquipment, 'system' | 'name'> & Partial<SnapshotEquipment>)[];
  return named.map((item, index) => ({ ...none, id: sampleId(5000 + index), ...item }));
}

/** A letter of either kind about these findings. */
export function sampleLetter(kind: LetterSnapshot['kind'], findings: SnapshotFinding[]): LetterSnapshot {
  return {
    ...common,
    kind,
    findings,
    issuedReports: [
      { kind: 'full', revision: 1, issuedAt: '2026-05-06T23:30:00Z', sha256: 'ab12'.repeat(16) },
    ],
  };
}
