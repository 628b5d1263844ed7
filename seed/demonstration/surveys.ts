import { vesselCreate } from '@garboard/contract/vessels';
import type { AcceptedFile } from '@garboard/core/files/received-file';
import { createFinding } from '@garboard/core/findings/create-finding';
import { addParty } from '@garboard/core/parties/add-party';
import { listParties } from '@garboard/core/parties/list-parties';
import { nameFindings } from '@garboard/core/parties/name-yards';
import { updatePhoto } from '@garboard/core/photos/update-photo';
import { uploadPhotos } from '@garboard/core/photos/upload-photos';
import { requestReport } from '@garboard/core/reports/request-report';
import { createSurvey } from '@garboard/core/surveys/create-survey';
import { updateSurvey } from '@garboard/core/surveys/update-survey';
import { createVessel } from '@garboard/core/vessels/create-vessel';
import { createWorksheet } from '@garboard/core/worksheets/create-worksheet';
import { partyRoleLabels } from '@garboard/trade/vocabulary';
import { world } from '../world/index.ts';
import type { PlannedPhoto } from '../world/photos.ts';
import type {
  CoverageSpec,
  EquipmentSpec,
  FindingSpec,
  SurveySpec,
  WorksheetSpec,
  World,
} from '../world/types.ts';
import { answerSystems, listEquipment } from './aboard.ts';
import { playEngagement } from './engagement.ts';
import { playEvidence } from './evidence.ts';
import type { Press } from './press.ts';
import { shareReport } from './shares.ts';
import { actorOf, as, calendarDay, dayFrom, type Stage } from './stage.ts';

export interface Props {
  survey: SurveySpec;
  worksheets: readonly WorksheetSpec[];
  coverage: readonly CoverageSpec[];
  inventory: readonly EquipmentSpec[];
  vesselIds: ReadonlyMap<string, string>;
  planned: readonly PlannedPhoto[];
  drawn: ReadonlyMap<string, AcceptedFile>;
}

/** Records every vessel of the world; returns their ids by key. */
export async function recordVessels(stage: Stage, world: World): Promise<Map<string, string>> {
  const ids = new Map<string, string>();
  for (const { key, firm, ...fields } of world.vessels) {
    const staff = world.people.find((p) => p.firm?.key === firm && p.firm.role !== 'office');
    const input = vesselCreate.parse(fields);
    const vessel = await as(stage, actorOf(stage, staff?.key ?? ''), dayFrom(stage, -60), (ctx) =>
      createVessel(ctx, input),
    );
    ids.set(key, vessel.id);
  }
  return ids;
}

/** Plays a survey through from its booking to the state the world says it is in. */
export async function playSurvey(stage: Stage, press: Press, props: Props): Promise<void> {
  const { survey } = props;
  const surveyor = actorOf(stage, survey.surveyor);
  const firstDay = Math.min(0, survey.attendances[0]?.day ?? 0);
  const { id } = await as(stage, surveyor, dayFrom(stage, firstDay - 5), (ctx) =>
    createSurvey(ctx, {
      vesselId: props.vesselIds.get(survey.vessel) ?? '',
      purpose: survey.purpose,
      requestedBy: survey.requestedBy,
      scope: survey.scope,
      limitations: survey.limitations,
      timeZone: survey.timeZone,
      clearanceDecidedBy: survey.clearanceDecidedBy,
      printCosts: survey.printCosts ?? false,
      attendances: survey.attendances.map((a) => ({
        date: calendarDay(stage, a.day),
        place: a.place,
        condition: a.condition,
      })),
      // Those who are buying or selling come along.
      present: survey.parties
        .filter(({ role }) => role === 'owner' || role === 'buyer')
        .map(({ person, role }) => `${actorOf(stage, person).name}, ${partyRoleLabels[role].toLowerCase()}`),
    }),
  );
  for (const party of survey.parties) {
    const { name, email } = actorOf(stage, party.person);
    await as(stage, surveyor, dayFrom(stage, firstDay - 4), (ctx) =>
      addParty(ctx, {
        surveyId: id,
        party: { role: party.role, name, email, released: party.released, client: party.pays ?? false },
      }),
    );
  }
  await playEngagement(stage, {
    ...{ survey, surveyId: id, day: firstDay - 4 },
    lengthM: world.vessels.find(({ key }) => key === survey.vessel)?.lengthOverallM ?? 0,
  });
  const photoIds = await uploadAll(stage, props, id);
  const findingIds = new Map<string, string>();
  for (const finding of survey.findings) {
    findingIds.set(finding.key, await recordFinding(stage, props, id, finding, photoIds));
  }
  for (const worksheet of props.worksheets) {
    await keepWorksheet(stage, props, id, worksheet, findingIds);
  }
  await answerSystems(stage, props, id);
  await listEquipment(stage, props, id);
  if (survey.state === 'in-review') await move(stage, props, id, 'in-review', firstDay);
  if (survey.issuedDay === undefined) return;

  const issuedAt = dayFrom(stage, survey.issuedDay, 16);
  const report = await as(stage, surveyor, issuedAt, (ctx) =>
    requestReport(ctx, { surveyId: id, kind: 'full', publicUrl: stage.env.publicUrl }),
  );
  await press.print(surveyor.memberships[0]?.firmId ?? '', report.id, issuedAt);
  await giveYards(stage, props, id, findingIds);
  await shareReport(stage, { reportId: report.id, sharedBy: survey.surveyor, day: survey.issuedDay });
  await playEvidence(stage, props, findingIds);
  if (survey.state === 'closed') await move(stage, props, id, 'closed', 0);
}

/** Gives each yard what must be put right before the boat is used, and what else it sends evidence for. */
async function giveYards(stage: Stage, props: Props, id: string, findingIds: ReadonlyMap<string, string>) {
  const { survey } = props;
  const surveyor = actorOf(stage, survey.surveyor);
  await as(stage, surveyor, dayFrom(stage, survey.issuedDay ?? 0, 17), async (ctx) => {
    const { items } = await listParties(ctx, { surveyId: id, limit: 50 });
    for (const party of survey.parties.filter(({ role }) => role === 'yard')) {
      const { email } = actorOf(stage, party.person);
      const yard = items.find((item) => item.role === 'yard' && item.email === email);
      const theirs = survey.findings.filter(
        ({ urgency, clearances = [] }) =>
          urgency === 'before-use' || clearances.some(({ sentBy }) => sentBy === party.person),
      );
      await nameFindings(ctx, {
        surveyId: id,
        partyId: yard?.id ?? '',
        findingIds: theirs.map(({ key }) => findingIds.get(key) ?? ''),
      });
    }
  });
}

async function move(stage: Stage, props: Props, id: string, state: 'in-review' | 'closed', day: number) {
  const surveyor = actorOf(stage, props.survey.surveyor);
  await as(stage, surveyor, dayFrom(stage, day, 15), (ctx) => updateSurvey(ctx, { id, patch: { state } }));
}

/** Uploads the survey's own pictures with their captions; returns photo ids by file name. */
async function uploadAll(stage: Stage, props: Props, surveyId: string): Promise<Map<string, string>> {
  const surveyor = actorOf(stage, props.survey.surveyor);
  const at = dayFrom(stage, Math.min(0, props.survey.attendances[0]?.day ?? 0), 18);
  const own = props.planned.filter((p) => p.survey === props.survey.key && p.place.kind !== 'evidence');
  const accepted = own.flatMap((p) => props.drawn.get(p.fileName) ?? []);
  const ids = new Map<string, string>();
  if (accepted.length === 0) return ids;
  await as(stage, surveyor, at, async (ctx) => {
    const { items } = await uploadPhotos(ctx, { surveyId, upload: { accepted, refused: [] } });
    for (const item of items) ids.set(item.fileName, item.id);
    for (const p of own) {
      await updatePhoto(ctx, { id: ids.get(p.fileName) ?? '', patch: { caption: p.caption } });
    }
    const cover = own.find((p) => p.place.kind === 'survey');
    if (cover) {
      await updateSurvey(ctx, { id: surveyId, patch: { leadPhotoId: ids.get(cover.fileName) ?? null } });
    }
  });
  return ids;
}

async function recordFinding(
  stage: Stage,
  props: Props,
  surveyId: string,
  spec: FindingSpec,
  photoIds: ReadonlyMap<string, string>,
): Promise<string> {
  const surveyor = actorOf(stage, props.survey.surveyor);
  const at = dayFrom(stage, Math.min(0, props.survey.attendances[0]?.day ?? 0) + 1, 11);
  const shown = props.planned.filter(
    (p) => p.survey === props.survey.key && p.place.kind === 'finding' && p.place.finding === spec.key,
  );
  const { system, title, observed, consequence, recommendation, urgency, harms, references } = spec;
  const finding = await as(stage, surveyor, at, (ctx) =>
    createFinding(ctx, {
      surveyId,
      finding: {
        ...{ system, title, observed, consequence, recommendation, urgency, harms, references },
        withinDays: spec.withinDays ?? null,
        photoIds: shown.flatMap((p) => photoIds.get(p.fileName) ?? []),
        catalogueKey: null,
        catalogueVersion: null,
        position: spec.position,
        cost: spec.cost ?? null,
        grading: null,
        items: (spec.items ?? []).map((text) => ({ text })),
        dueOnSet: null,
      },
    }),
  );
  return finding.id;
}

async function keepWorksheet(
  stage: Stage,
  props: Props,
  surveyId: string,
  { finding, kind, title, inputs }: WorksheetSpec,
  findingIds: ReadonlyMap<string, string>,
): Promise<void> {
  const surveyor = actorOf(stage, props.survey.surveyor);
  const at = dayFrom(stage, Math.min(0, props.survey.attendances[0]?.day ?? 0) + 1, 12);
  const findingId = finding === undefined ? null : (findingIds.get(finding) ?? null);
  const worksheet = { kind, title, inputs, findingId, printed: true };
  await as(stage, surveyor, at, (ctx) => createWorksheet(ctx, { surveyId, worksheet }));
}
