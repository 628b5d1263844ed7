import type {
  LetterSnapshot,
  ReportSnapshot,
  SurveyReportSnapshot,
} from '@garboard/contract/report-snapshot';
import { sampleClearance, sampleId } from '../sample-snapshot.ts';
import { referencePhoto, reportOf, worked } from './from-world.ts';

const on = '2026-05-06';

/** Worksheets of a trial and of a value, as a pre-purchase survey of a small motor boat would hold them. */
const trial = () =>
  worked(50, 'Runs over the measured distance', 'speed-runs', {
    distance: 1,
    runs: [
      { along: 'out', time: { value: 6.1, unit: 'min' } },
      { along: 'back', time: { value: 5.2, unit: 'min' } },
      { along: 'out', time: { value: 6.2, unit: 'min' } },
      { along: 'back', time: { value: 5.1, unit: 'min' } },
    ],
  });

const value = () => [
  worked(51, 'Sales of like boats', 'comparable-sales', {
    currency: 'EUR',
    valueOn: on,
    askingGap: 8,
    sales: [
      { boat: 'Seven metres, 2005, lake', price: 21_500, basis: 'sold', date: '2026-02-10' },
      { boat: 'Seven metres, 2007, coast', price: 24_900, basis: 'sold', date: '2025-11-02' },
      { boat: 'Six and a half metres, 2006', price: 19_800, basis: 'sold', date: '2026-03-28' },
      { boat: 'Seven metres, 2008', price: 26_500, basis: 'asking', date: '2026-04-30' },
    ],
  }),
  worked(52, 'What she would cost new, less age', 'cost-less-depreciation', {
    currency: 'EUR',
    method: 'straight',
    parts: [
      { part: 'Hull and deck', costNew: 38_000, effectiveAge: 14, remainingLife: 18 },
      { part: 'Engine and drive', costNew: 16_000, effectiveAge: 12, remainingLife: 6 },
    ],
  }),
  worked(53, 'Both approaches weighed', 'reconcile', {
    currency: 'EUR',
    valueOn: on,
    kindOfValue: 'market',
    salesValue: 22_000,
    salesWeight: 70,
    costValue: 24_500,
    costWeight: 30,
    salesReason: 'Four sales of the last half year, three of them closed.',
    costReason: 'Age and upkeep are judged, not measured.',
    incomeReason: 'She earns nothing.',
  }),
];

function prePurchase(): SurveyReportSnapshot {
  const report = reportOf('larkspindle-insurance', {
    'lk-heads-seacock': 'seacock-seized',
    'lk-cockpit-drain': 'through-hull-pipe-before-seacock',
    'lk-deck-core': 'cored-deck-wet-fittings',
    'lk-blisters': 'hull-blisters-laminate',
    'lk-cutless': 'shaft-bearing-worn',
    'lk-swage': 'rig-swage-lengthwise-crack',
    'lk-gas-locker': 'gas-locker-drain-shared',
    'lk-battery': 'dc-battery-unsecured',
    'lk-shackle': 'anchor-shackle-moused-wrongly',
  });
  return {
    ...report,
    survey: { ...report.survey, purpose: 'pre-purchase' },
    worksheets: [...report.worksheets, trial()],
    revision: 2,
    revisions: [
      { revision: 1, issuedAt: '2026-05-05T10:00:00Z', sha256: 'ab12'.repeat(16) },
      { revision: 2, issuedAt: '2026-05-06T23:30:00Z', sha256: null },
    ],
    changes: {
      against: 1,
      added: [{ number: 22, title: report.findings[21]?.title ?? '' }],
      changed: [{ number: 3, title: report.findings[2]?.title ?? '', what: ['what was seen', 'photos'] }],
      withdrawn: [
        { number: 23, title: 'Loose lifeline on the port quarter', reason: 'Seen tight on the second day.' },
      ],
      record: ['limitations'],
    },
  };
}

function valuation(): SurveyReportSnapshot {
  const report = reportOf('pepper-condition');
  return {
    ...report,
    survey: { ...report.survey, purpose: 'valuation' },
    worksheets: [...report.worksheets, trial(), ...value()],
  };
}

function letterPaper(): SurveyReportSnapshot {
  const report = reportOf('tamarack-insurance');
  const [first, ...rest] = report.findings;
  if (!first) throw new Error('The survey has no finding.');
  return {
    ...report,
    paper: 'Letter',
    measures: 'us',
    firm: { ...report.firm, name: 'Ναυτικοί Πραγματογνώμονες Λευκής Ακτής' },
    vessel: {
      ...report.vessel,
      name: 'نجمة البحر',
      homePort: 'Μικρό Λιμάνι',
      builder: 'Верфь «Тихая Гавань» 🌊',
    },
    survey: { ...report.survey, requestedBy: 'مريم البحرية، مشترية محتملة' },
    present: ['Ελένη Θαλασσινού, ιδιοκτήτρια', 'Пётр Снегирь ⚓, механик', 'يوسف المرسى، وسيط'],
    findings: [
      {
        ...first,
        photos: [
          referencePhoto(90, 'Panorama of the foredeck', [3000, 900]),
          referencePhoto(91, 'The mast from the deck up', [600, 1800]),
          referencePhoto(92, 'Терминал ванты, трещина 12 мм'),
          referencePhoto(93, 'Ο ακροδέκτης του ξαρτιού'),
          referencePhoto(94, 'طرف الكابل من الجهة اليسرى'),
        ],
      },
      ...rest,
    ],
  };
}

/** The addendum after a visit to the small insurance survey. */
function addendum(): ReportSnapshot {
  const report = reportOf('tamarack-insurance');
  const { findings, ...rest } = report;
  const decided = findings.slice(0, 2).map((finding, index) => ({
    ...finding,
    photos: [],
    state: index === 0 ? ('cleared' as const) : ('returned' as const),
    clearance: sampleClearance({
      statement: 'Renewed and tested.',
      workDoneBy: 'Arlen Gas Fitters',
      workDoneOn: '2026-06-02',
      decision: index === 0 ? ('accept' as const) : ('return' as const),
      decidedByName: 'Ines Quorn',
      decidedByRole: 'surveyor' as const,
      decidedAt: '2026-06-10T10:00:00Z',
      reason: index === 0 ? null : 'The float still sticks when the bilge is pumped dry by hand.',
    }),
  }));
  return {
    ...rest,
    kind: 're-inspection',
    attendances: [{ date: '2026-06-10', place: 'Arlen Boatyard', condition: 'ashore' }],
    findings: decided,
    lookedAgain: decided.map((finding, index) => ({
      findingId: finding.id,
      found:
        index === 0
          ? 'The hose is new, marked 2026, and sleeved where it leaves the locker.'
          : 'The float still sticks when the bilge is pumped dry by hand.',
      outcome: index === 0 ? ('put-right' as const) : ('not-put-right' as const),
      items: [],
      limit: null,
      limitUntil: null,
      photos: index === 0 ? [referencePhoto(85, 'The mark on the new hose')] : [],
      pairs: findings[index]?.photos[0]
        ? [
            {
              before: findings[index].photos[0],
              after: referencePhoto(80 + index, 'After the work', index === 0 ? [1200, 900] : [900, 1200]),
            },
          ]
        : [],
    })),
    visit: {
      date: '2026-06-10',
      place: 'Arlen Boatyard',
      condition: 'ashore',
      note: 'Ashore on trestles, dry. The owner was present.',
      by: 'Ines Quorn',
    },
    issuedReports: [
      { kind: 'full', revision: 1, issuedAt: '2026-05-06T23:30:00Z', sha256: 'ab12'.repeat(16) },
    ],
  };
}

/** The letter once all is decided: one cleared in two goes after more time, one accepted within a limit, one withdrawn. */
function clearanceLetter(): LetterSnapshot {
  const {
    worksheets: _w,
    coverage: _c,
    inventory: _i,
    catalogue: _k,
    leadPhoto: _l,
    ...report
  } = reportOf('tamarack-insurance');
  const { hullNumberDecoded: _h, ...rest } = report;
  const [first, second, third] = report.findings.map((f) => ({ ...f, photos: [] }));
  if (!first || !second || !third) throw new Error('The survey has too few findings.');
  const items = ['Renew the hose between locker and cooker', 'Sleeve it where it leaves the locker'].map(
    (text, n) => ({ id: sampleId(900 + n), text, state: 'cleared' as const, limit: null, limitUntil: null }),
  );
  const covered = (n: number) =>
    items.slice(n, n + 1).map(({ id: itemId, text }) => ({
      ...{ itemId, text, decision: 'accept' as const, reason: null, limit: null, limitUntil: null },
    }));
  const evidence = [
    sampleClearance({ items: covered(0), photos: 2, documents: ['invoice-204.pdf'] }),
    sampleClearance({
      statement: 'Sleeve fitted, and the installation tested again.',
      items: covered(1),
      sentAt: '2026-06-02T09:00:00Z',
      decidedAt: '2026-06-04T15:00:00Z',
      photos: 1,
      worksheet: { title: 'Gas leak-down test', verdict: 'satisfactory' },
    }),
  ];
  const limit = { text: 'Inland waters, in daylight', until: '2026-10-31' };
  const asIs = sampleClearance({
    statement: 'The part is ordered and comes in autumn.',
    decision: 'accept-as-is',
    reason: 'The fault is slow and can be watched.',
    ...{ limit: limit.text, limitUntil: limit.until },
  });
  const more = {
    ...{ from: '2026-05-20', dueOn: '2026-06-15', reason: 'The yard waits for the sleeve.' },
    ...{ byName: 'P. Vane', byRole: 'insurer' as const, at: '2026-05-18T09:00:00Z' },
  };
  return {
    ...rest,
    kind: 'clearance-letter',
    frozenAt: '2026-06-10T08:00:00Z',
    findings: [
      {
        ...first,
        ...{ state: 'cleared', items, evidence, clearance: evidence[1] ?? null },
        ...{ extensions: [more], dueOn: more.dueOn, dueStated: true },
      },
      { ...second, state: 'accepted-as-is', limit, evidence: [asIs], clearance: asIs },
      {
        ...third,
        state: 'withdrawn',
        withdrawal: {
          ...{ reason: 'On a second look a casting mark.', by: 'Ines Quorn', at: '2026-06-01T08:00:00Z' },
        },
      },
    ],
    issuedReports: [
      { kind: 'full', revision: 1, issuedAt: '2026-05-06T23:30:00Z', sha256: 'ab12'.repeat(16) },
    ],
  };
}

/** The same before all is decided: some items are open, one finding had evidence returned. */
function statusLetter(): LetterSnapshot {
  const letter = clearanceLetter();
  const [first, second, third] = letter.findings;
  if (!first || !second || !third) throw new Error('The survey has too few findings.');
  const items = first.items.map((item, n) => (n === 0 ? item : { ...item, state: 'open' as const }));
  const returned = sampleClearance({ decision: 'return', reason: 'Show the clips from behind.' });
  return {
    ...letter,
    kind: 'status-letter',
    findings: [
      { ...first, state: 'open', items, evidence: first.evidence.slice(0, 1) },
      second,
      { ...third, state: 'returned', withdrawal: null, evidence: [returned], clearance: returned },
    ],
  };
}

/** The documents whose pages are compared with accepted ones, by the name of their files. */
export const references: Record<string, () => ReportSnapshot> = {
  insurance: () => reportOf('tamarack-insurance'),
  'pre-purchase': prePurchase,
  valuation,
  'metal-hull': () => ({
    ...reportOf('oxbow-pre-purchase'),
    survey: { ...reportOf('oxbow-pre-purchase').survey, printCosts: true },
  }),
  'letter-paper': letterPaper,
  summary: () => {
    const report = prePurchase();
    return {
      ...report,
      kind: 'summary',
      revision: 1,
      revisions: [],
      changes: null,
      worksheets: [],
      inventory: [],
      findings: report.findings.map((f) => ({ ...f, photos: [], cost: null })),
    };
  },
  addendum,
  'clearance-letter': clearanceLetter,
  'status-letter': statusLetter,
  recommendations: () => ({
    ...reportOf('oxbow-pre-purchase'),
    kind: 'recommendations',
    coverage: [],
    inventory: [],
  }),
};
