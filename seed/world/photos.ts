import type { SceneKey } from '../scenes/index.ts';
import { seedFromText } from '../scenes/random.ts';
import type { RenderOptions } from '../scenes/render.ts';
import type { PhotoSpec, SurveySpec, World } from './types.ts';

/** Where in the world a photo hangs: general view, a finding, or evidence for one (by round). */
export type PhotoPlace =
  | { kind: 'survey'; index: number }
  | { kind: 'finding'; finding: string; index: number }
  | { kind: 'evidence'; finding: string; round: number; index: number };

/** A photo to be made: what to draw, how, and what it belongs to. */
export interface PlannedPhoto {
  survey: string;
  place: PhotoPlace;
  scene: SceneKey;
  caption: string;
  /** As a camera would have named it, such as `IMG_0412.jpg`; unique over the whole world. */
  fileName: string;
  options: RenderOptions;
}

const day = 86_400_000;

/** An invented place in open ocean, far from any harbour. */
const midOcean = { latitude: -41.2345, longitude: -112.6789 };

/** Offset of a time zone from UTC at an instant, in minutes. */
function utcOffset(at: Date, timeZone: string): number {
  const name = new Intl.DateTimeFormat('en-US', { timeZone, timeZoneName: 'longOffset' })
    .formatToParts(at)
    .find((part) => part.type === 'timeZoneName')?.value;
  const match = /GMT([+-])(\d\d):(\d\d)/.exec(name ?? '');
  if (!match) return 0;
  return (match[1] === '-' ? -1 : 1) * (Number(match[2]) * 60 + Number(match[3]));
}

/** 09:40 local (taken as UTC less the zone's offset) on a day counted from loading. */
function morning(loadedAt: Date, offsetDays: number, timeZone: string): Date {
  const date = new Date(Math.floor(loadedAt.getTime() / day) * day + offsetDays * day + 580 * 60_000);
  return new Date(date.getTime() - utcOffset(date, timeZone) * 60_000);
}

/**
 * Every photo of the world in the order they were taken, with times counted from `loadedAt`.
 * The survey's pictures are taken on its first day of attendance, four minutes apart.
 */
export function photoScenes(world: World, loadedAt: Date): PlannedPhoto[] {
  const planned: PlannedPhoto[] = [];
  let number = 408;
  const plan = (survey: SurveySpec, spec: PhotoSpec, place: PhotoPlace, takenAt: Date): void => {
    number += 1 + (seedFromText(spec.caption) % 3);
    const fileName = `IMG_${String(number).padStart(4, '0')}.jpg`;
    planned.push({
      survey: survey.key,
      place,
      scene: spec.scene,
      caption: spec.caption,
      fileName,
      options: {
        seed: seedFromText(`${survey.key}/${fileName}`),
        takenAt,
        orientation: spec.orientation ?? 1,
        utcOffsetMinutes: utcOffset(takenAt, survey.timeZone),
        ...(spec.gps && { position: midOcean }),
      },
    });
  };
  for (const survey of world.surveys) {
    const start = morning(loadedAt, survey.attendances[0]?.day ?? 0, survey.timeZone);
    let taken = 0;
    const next = (): Date => new Date(start.getTime() + taken++ * 4 * 60_000 + 7_000);
    survey.photos.forEach((spec, index) => {
      plan(survey, spec, { kind: 'survey', index }, next());
    });
    for (const finding of survey.findings) {
      finding.photos.forEach((spec, index) => {
        plan(survey, spec, { kind: 'finding', finding: finding.key, index }, next());
      });
    }
    for (const finding of survey.findings) {
      finding.clearances?.forEach((clearance, round) => {
        clearance.photos.forEach((spec, index) => {
          const at = morning(loadedAt, clearance.workDoneDay, survey.timeZone);
          plan(
            survey,
            spec,
            { kind: 'evidence', finding: finding.key, round, index },
            new Date(at.getTime() + (index + 6) * 3_600_000),
          );
        });
      });
    }
  }
  return planned;
}
