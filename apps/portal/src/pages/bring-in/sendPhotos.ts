import { ProblemError } from '../../api/client.ts';
import { explain } from '../../api/problems.ts';
import { upload } from '../../api/upload.ts';

/** What became of a photo: the survey's, or why it was refused. */
export type Settled = { photoId: string; problem: null } | { photoId: null; problem: string };

// While one is being looked at by the server, the next keep the line busy.
const atOnce = 3;

/**
 * Sends photos to a survey, each by itself, so that each one's fate is known. What is settled already is passed over.
 *
 * @throws TypeError when the server can't be reached; what was settled until then stays so
 */
export async function sendPhotos(
  surveyId: string,
  photos: ReadonlyMap<string, File>,
  settled: Map<string, Settled>,
  onSettled: () => void,
): Promise<void> {
  const waiting = [...photos].filter(([name]) => !settled.has(name));
  let lost: unknown;
  const work = async () => {
    for (let next = waiting.shift(); next && !lost; next = waiting.shift()) {
      const [name, file] = next;
      try {
        settled.set(name, await sendOne(surveyId, file));
        onSettled();
      } catch (error) {
        lost = error;
      }
    }
  };
  await Promise.all(Array.from({ length: atOnce }, work));
  if (lost) throw lost;
}

async function sendOne(surveyId: string, file: File): Promise<Settled> {
  const form = new FormData();
  form.append('file', file, file.name);
  try {
    const { items } = await upload('uploadPhotos', surveyId, form, () => undefined);
    const [photo] = items;
    return photo
      ? { photoId: photo.id, problem: null }
      : { photoId: null, problem: 'The server took it for no photo.' };
  } catch (error) {
    // Only what is about this file; signed out or shut out concerns them all.
    const ofFile = error instanceof ProblemError && [413, 415, 422].includes(error.problem.status);
    if (!ofFile) throw error;
    const { detail, title } = explain(error);
    return { photoId: null, problem: error.problem.errors?.[0]?.detail ?? (detail || title) };
  }
}
