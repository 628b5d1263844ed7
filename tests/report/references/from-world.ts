import type {
  SnapshotEquipment,
  SnapshotFinding,
  SnapshotPhoto,
  SnapshotWorksheet,
  SurveyReportSnapshot,
} from '@garboard/contract/report-snapshot';
import { decodedHullNumber } from '@garboard/core/reports/decoded-hull-number';
import { world } from '@garboard/seed/world/index';
import type { FindingSpec } from '@garboard/seed/world/types';
import { findEntry } from '@garboard/trade/catalogue/catalogue';
import { diagrams } from '@garboard/trade/catalogue/diagrams';
import { dueOn } from '@garboard/trade/due-dates';
import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import { sampleId, sampleReport, unmoved } from '../sample-snapshot.ts';

const issuedOn = '2026-05-07';
const month = (from: number, day: number) =>
  new Date(Date.UTC(2026, 4 + from, day)).toISOString().slice(0, 10);

/** Sizes photos come in, the usual more often: of a phone lying and upright, a wide one, a tall one. */
const sizes = [
  [1200, 900],
  [1200, 900],
  [900, 1200],
  [1200, 900],
  [1200, 675],
] as const;

/** A photo numbered over the whole report; its picture is drawn from its id. */
export function referencePhoto(n: number, caption: string, size?: readonly [number, number]): SnapshotPhoto {
  const [width, height] = size ?? sizes[n % sizes.length] ?? sizes[0];
  return { id: sampleId(7_000_000 + n), caption, width, height, takenAt: '2026-05-04T09:30:00Z' };
}

/** Where on board each system mostly is. */
const places: Record<string, SnapshotFinding['position']> = {
  'through-hulls': { along: 0.55, height: 0.35, side: 'port' },
  'cored-structure': { along: 0.45, height: 1, side: 'starboard' },
  deck: { along: 0.6, height: 1, side: 'port' },
  hull: { along: 0.7, height: 0.3, side: 'starboard' },
  'shaft-propeller': { along: 0.8, height: 0.2, side: 'centre' },
  steering: { along: 0.9, height: 0.4, side: 'centre' },
  'ground-tackle': { along: 0.03, height: 0.95, side: 'centre' },
  'rig-sails': { along: 0.42, height: 0.7, side: 'port' },
  engine: { along: 0.65, height: 0.5, side: 'centre' },
  exhaust: { along: 0.75, height: 0.55, side: 'centre' },
  gas: { along: 0.92, height: 0.9, side: 'starboard' },
  'dc-electrical': { along: 0.6, height: 0.6, side: 'starboard' },
  'navigation-lights': { along: 0.02, height: 0.9, side: 'port' },
};

/** The surveys of the invented world, as a report would freeze them on a fixed day. */
export function reportOf(key: string, catalogueKeys: Record<string, string> = {}): SurveyReportSnapshot {
  const survey = world.surveys.find((s) => s.key === key);
  const vessel = world.vessels.find((v) => v.key === survey?.vessel);
  const firm = world.firms.find((f) => f.key === survey?.firm);
  if (!survey || !vessel || !firm) throw new Error(`The world has no survey ${key}.`);
  let photos = 1;
  const findings = survey.findings.map((spec, index) =>
    findingOf(spec, index + 1, {
      photos: spec.photos.map(({ caption }) => referencePhoto(photos++, caption)),
      catalogueKey: catalogueKeys[spec.key] ?? null,
      position: index % 6 === 5 ? null : (places[spec.system] ?? null),
    }),
  );
  const idOf = new Map(survey.findings.map((spec, index) => [spec.key, sampleId(index + 1)]));
  const { key: _, firm: __, ...particulars } = vessel;
  return {
    ...sampleReport(0),
    firm: { name: firm.name, addressLines: firm.address.split(', '), email: firm.email, phone: firm.phone },
    survey: {
      ...sampleReport(0).survey,
      purpose: survey.purpose,
      requestedBy: survey.requestedBy,
      scope: survey.scope,
      limitations: survey.limitations,
      clearanceDecidedBy: survey.clearanceDecidedBy,
      printCosts: survey.printCosts ?? false,
    },
    vessel: particulars,
    attendances: survey.attendances.map(({ place, condition }, index) => ({
      date: `2026-05-0${4 + index}`,
      place,
      condition,
    })),
    leadPhoto: referencePhoto(0, survey.photos[0]?.caption ?? 'At her berth', [1600, 1067]),
    findings,
    worksheets: world.worksheets
      .filter((w) => w.survey === key)
      .map((w, index) =>
        worked(index, w.title, w.kind, w.inputs, w.finding ? (idOf.get(w.finding) ?? null) : null),
      ),
    coverage: world.coverage.filter((c) => c.survey === key).map(({ survey: _s, ...item }) => item),
    inventory: equipmentOf(key),
    hullNumberDecoded: decodedHullNumber(vessel.hullNumber, vessel.yearBuilt),
    catalogue: Object.fromEntries(
      Object.values(catalogueKeys).flatMap((name) => {
        const entry = findEntry(name);
        return entry
          ? [[name, { title: entry.title, diagram: (entry.diagram && diagrams[entry.diagram]) || null }]]
          : [];
      }),
    ),
  };
}

function findingOf(spec: FindingSpec, number: number, more: Partial<SnapshotFinding>): SnapshotFinding {
  const { system, title, observed, consequence, recommendation, urgency, harms, references, cost } = spec;
  const withinDays = spec.withinDays ?? null;
  return {
    id: sampleId(number),
    number,
    ...{ system, title, observed, consequence, recommendation, urgency, withinDays, harms, references },
    dueOn: dueOn(urgency, withinDays, issuedOn),
    photos: [],
    state: 'open',
    clearance: null,
    cost: cost ?? null,
    catalogueKey: null,
    position: null,
    ...unmoved,
    ...more,
  };
}

/** A worksheet worked on these inputs, as a report freezes it. */
export function worked(
  n: number,
  title: string,
  kind: string,
  inputs: Record<string, unknown>,
  findingId: string | null = null,
): SnapshotWorksheet {
  const worksheet = findWorksheet(kind);
  if (!worksheet) throw new Error(`There is no worksheet ${kind}.`);
  return { id: sampleId(3_000_000 + n), findingId, title, result: evaluate(worksheet, inputs) };
}

function equipmentOf(key: string): SnapshotEquipment[] {
  const dated = (date: number | string | undefined, day: number) =>
    date === undefined ? null : typeof date === 'string' ? date : month(date, day);
  return world.inventory
    .filter((item) => item.survey === key)
    .map((item, index) => ({
      id: sampleId(4_000_000 + index),
      system: item.system,
      name: item.name,
      maker: item.maker ?? null,
      serialNumber: item.serialNumber ?? null,
      place: item.place ?? null,
      count: item.count ?? 1,
      madeOn: dated(item.made, 1),
      expiresOn: dated(item.expires, 28),
      note: item.note ?? '',
    }));
}
