import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { AcceptedFile } from '@garboard/core/files/received-file';
import { newId } from '@garboard/db/ids';
import { openObjectStore } from '@garboard/platform/object-store';
import { underWay } from '../interrupted-load.ts';
import { world } from '../world/index.ts';
import { photoScenes } from '../world/photos.ts';
import { castPeople } from './cast.ts';
import { setRates } from './engagement.ts';
import { drawAll } from './photos.ts';
import { openPress } from './press.ts';
import type { LoadInput, Stage } from './stage.ts';
import { playSurvey, recordVessels } from './surveys.ts';

/** Loads the invented firms, their surveys and photos, by the use cases that people use. */
export async function loadDemonstration(input: LoadInput): Promise<void> {
  const mark = newId();
  await input.db.prisma.oneTimeLink.create({
    data: { id: mark, kind: underWay, tokenHash: mark, expiresAt: new Date() },
  });
  const stage: Stage = {
    ...input,
    store: await openObjectStore(input.env.objectStoreUrl, input.env.dataDir),
    loadedAt: new Date(),
    firmIds: new Map(),
    actors: new Map(),
  };
  const signIns = await castPeople(stage, world);
  await setRates(stage, world);
  const vesselIds = await recordVessels(stage, world);
  const planned = photoScenes(world, stage.loadedAt);
  const drawn = new Map<string, AcceptedFile>();
  await drawAll(stage, planned, (photo, file) => {
    drawn.set(photo.fileName, file);
    if (drawn.size % 20 === 0) stage.say({ step: 'drawing', done: drawn.size, of: planned.length });
  });
  const press = await openPress(stage);
  try {
    for (const survey of world.surveys) {
      const ofSurvey = (spec: { survey: string }) => spec.survey === survey.key;
      const worksheets = world.worksheets.filter(ofSurvey);
      const coverage = world.coverage.filter(ofSurvey);
      const inventory = world.inventory.filter(ofSurvey);
      await playSurvey(stage, press, {
        ...{ survey, worksheets, coverage, inventory },
        ...{ vesselIds, planned, drawn },
      });
      stage.say({ step: 'survey', vessel: survey.vessel, state: survey.state });
    }
  } finally {
    await press.close();
  }
  const path = join(input.env.dataDir, 'demo-sign-ins.json');
  await writeFile(path, `${JSON.stringify(signIns, null, 2)}\n`, { mode: 0o600 });
  await input.db.prisma.oneTimeLink.delete({ where: { id: mark } });
}
