import { scenes } from '@garboard/seed/scenes/index';
import { renderScene } from '@garboard/seed/scenes/render';
import { world } from '@garboard/seed/world/index';
import { invoicePdf } from '@garboard/seed/world/invoice';
import { photoScenes } from '@garboard/seed/world/photos';
import { reachNeedsReason, systemsAsked } from '@garboard/trade/coverage';
import {
  attendanceConditions,
  findingStates,
  firmRoles,
  harms,
  hullMaterialLabels,
  partyRoles,
  propulsionLabels,
  purposes,
  surveyStates,
  systems,
  urgencies,
} from '@garboard/trade/vocabulary';
import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import exifr from 'exifr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';

const loadedAt = new Date('2026-11-25T08:00:00Z');
const findings = world.surveys.flatMap((survey) => survey.findings);
const ofFirm = (key: string) => world.surveys.filter((survey) => survey.firm === key);
const planned = photoScenes(world, loadedAt);
const hasDuplicates = (list: readonly string[]): boolean => new Set(list).size !== list.length;

describe('the invented world', () => {
  it('uses only words of the trade', () => {
    for (const survey of world.surveys) {
      expect(purposes).toContain(survey.purpose);
      expect(surveyStates).toContain(survey.state);
      for (const a of survey.attendances) expect(attendanceConditions).toContain(a.condition);
      for (const party of survey.parties) expect(partyRoles).toContain(party.role);
    }
    for (const finding of findings) {
      expect(systems).toContain(finding.system);
      expect(urgencies).toContain(finding.urgency);
      expect(findingStates).toContain(finding.state);
      expect(finding.harms.length).toBeGreaterThan(0);
      for (const harm of finding.harms) expect(harms).toContain(harm);
    }
    for (const person of world.people) if (person.firm) expect(firmRoles).toContain(person.firm.role);
    for (const vessel of world.vessels) {
      expect(Object.keys(hullMaterialLabels)).toContain(vessel.hullMaterial);
      expect(Object.keys(propulsionLabels)).toContain(vessel.propulsion);
    }
  });

  it('is as large as the demonstration asks for', () => {
    expect(world.vessels.filter((vessel) => vessel.firm === 'pellowick')).toHaveLength(3);
    expect(ofFirm('pellowick')).toHaveLength(4);
    expect(new Set(ofFirm('pellowick').map((survey) => survey.state)).size).toBe(4);
    expect(ofFirm('pellowick').flatMap((survey) => survey.findings).length).toBeGreaterThanOrEqual(28);
    expect(ofFirm('dunmarrow')).toHaveLength(1);
    const covered = new Set(findings.map((finding) => finding.system));
    for (const system of [
      ...(['hull', 'deck', 'engine', 'exhaust', 'shaft-propeller', 'gas', 'dc-electrical'] as const),
      ...(['ac-electrical', 'rig-sails', 'steering', 'fire-safety', 'life-saving'] as const),
      ...(['through-hulls', 'corrosion-protection', 'ground-tackle'] as const),
    ]) {
      expect(covered).toContain(system);
    }
  });

  it.each(world.worksheets)('has a worksheet on $title that works and fits its finding', (spec) => {
    const computation = findWorksheet(spec.kind);
    if (!computation) throw new Error(`There is no worksheet of kind ${spec.kind}.`);
    const result = evaluate(computation, spec.inputs);
    expect({ verdict: result.verdict, reasons: result.reasons }).toMatchObject({ verdict: spec.verdict });
    const survey = world.surveys.find((s) => s.key === spec.survey);
    expect(survey?.findings.map((f) => f.key) ?? []).toContain(spec.finding);
  });

  it('answers for every system that an issued survey or one in review is asked for, with its reasons', () => {
    for (const survey of world.surveys) {
      const answers = world.coverage.filter((c) => c.survey === survey.key);
      expect(hasDuplicates(answers.map((a) => a.system))).toBe(false);
      for (const { reached, reason } of answers) {
        expect(reachNeedsReason(reached) && reason === '').toBe(false);
      }
      const asked = systemsAsked(
        survey.purpose,
        survey.findings.map((f) => f.system),
      );
      const missing = asked.filter((s) => !answers.some((a) => a.system === s));
      if (survey.state === 'issued' || survey.state === 'in-review') expect(missing).toEqual([]);
      // Nothing is found in what wasn't reached or isn't there.
      for (const { system, reached } of answers) {
        if (survey.findings.some((f) => f.system === system))
          expect(['examined', 'partly']).toContain(reached);
      }
    }
    for (const item of world.inventory) expect(world.surveys.map((s) => s.key)).toContain(item.survey);
  });

  it('has an issued survey with findings in every state after issue that a person will look for', () => {
    const issued = ofFirm('pellowick').find((survey) => survey.state === 'issued');
    expect(issued?.findings.length).toBeGreaterThanOrEqual(14);
    const inState = (state: string) => issued?.findings.filter((finding) => finding.state === state) ?? [];
    expect(inState('cleared').length).toBeGreaterThanOrEqual(2);
    expect(inState('returned')).toHaveLength(1);
    expect(inState('evidence-sent')).toHaveLength(1);
    expect(inState('accepted-as-is')).toHaveLength(1);
    const overdue = inState('open').filter(
      (f) => f.withinDays && (issued?.issuedDay ?? 0) + f.withinDays < 0,
    );
    expect(overdue.length).toBeGreaterThanOrEqual(3);
  });

  it('gives days to findings within days, and to no others', () => {
    for (const finding of findings) {
      expect(finding.withinDays !== undefined, finding.key).toBe(finding.urgency === 'within-days');
    }
  });

  it('names nothing twice and refers only to what exists', () => {
    expect(hasDuplicates(world.people.map((person) => person.email))).toBe(false);
    expect(hasDuplicates(world.people.map((person) => person.name))).toBe(false);
    expect(hasDuplicates(world.vessels.map((vessel) => vessel.name))).toBe(false);
    expect(hasDuplicates(world.vessels.map((vessel) => vessel.hullNumber))).toBe(false);
    expect(hasDuplicates(findings.map((finding) => finding.key))).toBe(false);
    const people = new Set(world.people.map((person) => person.key));
    const vessels = new Map(world.vessels.map((vessel) => [vessel.key, vessel]));
    for (const person of world.people) expect(person.email).toMatch(/\.example$/);
    for (const survey of world.surveys) {
      expect(vessels.get(survey.vessel)?.firm).toBe(survey.firm);
      const surveyor = world.people.find((person) => person.key === survey.surveyor);
      expect(surveyor?.firm?.key).toBe(survey.firm);
      for (const party of survey.parties) expect(people).toContain(party.person);
      expect(survey.issuedDay !== undefined).toBe(survey.state === 'issued' || survey.state === 'closed');
    }
  });

  it('tells each clearance so that its last step agrees with the state of the finding', () => {
    const end = { accept: 'cleared', return: 'returned', 'accept-as-is': 'accepted-as-is' } as const;
    for (const survey of world.surveys) {
      const senders = survey.parties.map((party) => party.person);
      const deciders = survey.parties
        .filter((party) => party.role === 'insurer')
        .map((party) => party.person);
      if (survey.clearanceDecidedBy === 'surveyor') deciders.push(survey.surveyor);
      for (const finding of survey.findings) {
        const steps = finding.clearances ?? [];
        const last = steps.at(-1);
        const expected = last ? (last.decision ? end[last.decision.decision] : 'evidence-sent') : undefined;
        const untouched = survey.issuedDay === undefined ? 'draft' : 'open';
        expect(finding.state, finding.key).toBe(expected ?? untouched);
        let before = survey.issuedDay ?? 0;
        for (const step of steps) {
          expect(senders).toContain(step.sentBy);
          expect(step.workDoneDay).toBeLessThanOrEqual(step.sentDay);
          expect(step.sentDay, finding.key).toBeGreaterThan(before);
          expect(step.photos.length + (step.invoice ? 1 : 0)).toBeGreaterThan(0);
          before = step.sentDay;
          if (!step.decision) continue;
          expect(deciders).toContain(step.decision.by);
          expect(step.decision.day).toBeGreaterThan(before);
          expect(step.decision.day).toBeLessThanOrEqual(0);
          before = step.decision.day;
        }
      }
    }
  });
});

describe('the photographs', () => {
  it('are planned for every finding, with scenes that exist and file names used once', () => {
    expect(planned.length).toBeLessThanOrEqual(70);
    expect(hasDuplicates(planned.map((photo) => photo.fileName))).toBe(false);
    for (const photo of planned) {
      expect(Object.keys(scenes)).toContain(photo.scene);
      expect(photo.options.takenAt.getTime()).toBeLessThan(loadedAt.getTime());
    }
    for (const finding of findings) {
      expect(finding.photos.length, finding.key).toBeGreaterThanOrEqual(1);
      expect(finding.photos.length).toBeLessThanOrEqual(4);
    }
    const orientations = new Set(planned.map((photo) => photo.options.orientation));
    expect([...orientations].sort()).toEqual([1, 3, 6, 8]);
    expect(planned.filter((photo) => photo.options.position).length).toBeGreaterThanOrEqual(2);
  });

  it('leave no scene unused', () => {
    const used = new Set<string>(planned.map((photo) => photo.scene));
    expect(Object.keys(scenes).filter((key) => !used.has(key))).toEqual([]);
  });

  it('are 12 megapixel JPEGs with capture time, its offset, orientation and position in EXIF', async () => {
    const jpeg = await renderScene('hull-blisters', {
      seed: 5,
      takenAt: new Date('2026-10-04T09:40:07Z'),
      orientation: 6,
      utcOffsetMinutes: 60,
      position: { latitude: -41.2345, longitude: -112.6789 },
    });
    const image = await sharp(jpeg).metadata();
    expect([image.format, image.width, image.height]).toEqual(['jpeg', 4000, 3000]);
    expect(jpeg.length).toBeGreaterThan(700_000);
    expect(jpeg.length).toBeLessThan(5_000_000);
    const exif = await exifr.parse(jpeg, { reviveValues: false, translateValues: false });
    expect(exif.DateTimeOriginal).toBe('2026:10:04 10:40:07');
    expect(exif.OffsetTimeOriginal).toBe('+01:00');
    expect(exif.Orientation).toBe(6);
    expect(exif.Make).toBeUndefined();
    const position = await exifr.gps(jpeg);
    expect(position?.latitude).toBeCloseTo(-41.2345, 3);
    expect(position?.longitude).toBeCloseTo(-112.6789, 3);
  });

  it('are stored turned, so that applying the orientation stands them upright', async () => {
    // The boat's sky is brighter than the ground: a picture that is the right way up is lighter at the top.
    for (const orientation of [1, 3, 6, 8] as const) {
      const jpeg = await renderScene('oxbow-ashore', {
        seed: 9,
        takenAt: loadedAt,
        orientation,
        longSide: 800,
      });
      const { data, info } = await sharp(jpeg).autoOrient().greyscale().raw().toBuffer({
        resolveWithObject: true,
      });
      const sideways = orientation === 6 || orientation === 8;
      expect(info.height > info.width).toBe(sideways);
      const band = info.width * Math.floor(info.height * 0.15);
      const mean = (part: Buffer): number => part.reduce((sum, v) => sum + v, 0) / part.length;
      expect(mean(data.subarray(0, band))).toBeGreaterThan(mean(data.subarray(-band)) + 20);
    }
  });

  it('come out the same for the same seed and differ for another', async () => {
    const draw = (seed: number) =>
      renderScene('propeller', { seed, takenAt: loadedAt, orientation: 1, longSide: 400 });
    const [a, b, c] = await Promise.all([draw(1), draw(1), draw(2)]);
    expect(a.equals(b)).toBe(true);
    expect(a.equals(c)).toBe(false);
  });

  // Every fourth, to keep the run short; loading the demonstration draws them all.
  it('are full of detail', { timeout: 120_000 }, async () => {
    for (const photo of planned.filter((_, i) => i % 4 === 0)) {
      const jpeg = await renderScene(photo.scene, { ...photo.options, longSide: 400 });
      const { entropy, channels } = await sharp(jpeg).stats();
      expect(entropy, photo.scene).toBeGreaterThan(5.5);
      expect(Math.max(...channels.map((channel) => channel.stdev)), photo.scene).toBeGreaterThan(18);
    }
  });
});

it('makes an invoice a reader of PDF can read', async () => {
  const invoice = findings.flatMap((f) => f.clearances ?? []).find((step) => step.invoice)?.invoice;
  if (!invoice) throw new Error('The world has no invoice.');
  const bytes = await invoicePdf(invoice, loadedAt);
  expect(Buffer.from(bytes).equals(Buffer.from(await invoicePdf(invoice, loadedAt)))).toBe(true);
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  expect(document.numPages).toBe(1);
  const text = (await (await document.getPage(1)).getTextContent()).items
    .map((item) => ('str' in item ? item.str : ''))
    .join(' ');
  expect(text).toContain(invoice.number);
  expect(text).toContain('GBP');
  expect(text).toContain(invoice.vessel);
  await document.destroy();
});
