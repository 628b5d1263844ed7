import type { Survey } from '@garboard/contract/surveys';
import { useState } from 'react';
import { uuidv7 } from 'uuidv7';
import { Incomplete } from '../../../api/problems.ts';
import { upload } from '../../../api/upload.ts';
import { useKeptDraft } from '../../../app/keptDraft.ts';
import { useCloseWarning, useHeldWriting } from '../../../app/leaving.tsx';
import { useMe } from '../../../app/session.tsx';
import { draftFileOf, dropDraftFiles, keepDraftFile } from '../../../capture/evidence.ts';
import { isFull } from '../../../capture/space.ts';
import { today } from '../../../ui/format.ts';
import { type SeenDraft, unseen, type VisitDraft } from './visitDraft.ts';

/** A visit, kept on the device with its photos from the first key or picture until it has arrived. */
export function useVisitDraft(survey: Survey) {
  const personId = useMe().person.id;
  const draft = useKeptDraft<VisitDraft>(personId, `re-inspection:${survey.id}`, () => ({
    id: uuidv7(),
    date: today(survey.timeZone),
    place: survey.attendances.at(-1)?.place ?? '',
    condition: '',
    note: '',
    seen: {},
  }));
  const [trouble, setTrouble] = useState<string | null>(null);
  const [keeping, setKeeping] = useState(0);
  const { value, change } = draft;
  const begun = Object.values(value?.seen ?? {}).some((one) => one.outcome || one.note || one.photos.length);
  useHeldWriting(begun);
  useCloseWarning(keeping > 0 || (begun && !draft.safe));

  const setSeen = (findingId: string, make: (from: SeenDraft) => SeenDraft) =>
    change((now) => ({ ...now, seen: { ...now.seen, [findingId]: make(now.seen[findingId] ?? unseen) } }));

  async function addPhotos(findingId: string, files: File[]) {
    setTrouble(null);
    setKeeping((n) => n + 1);
    for (const file of files) {
      try {
        const kept = await keepDraftFile(personId, file);
        setSeen(findingId, (now) => ({ ...now, photos: [...now.photos, { ...kept, photoId: null }] }));
      } catch (error) {
        setTrouble(
          isFull(error)
            ? `There is no room on this device for ${file.name}. Free some room and choose it again.`
            : `${file.name} could not be read. Choose it again.`,
        );
      }
    }
    setKeeping((n) => n - 1);
  }
  function takeOut(findingId: string, id: string) {
    setSeen(findingId, (now) => ({ ...now, photos: now.photos.filter((photo) => photo.id !== id) }));
    void dropDraftFiles(personId, [id]);
  }

  /**
   * Sends the photos that have not arrived yet, noting each as it does, so that a try cut short goes on from there.
   *
   * @returns the draft with every photo's record
   */
  async function sendPhotos(from: VisitDraft, onShare: (share: number) => void): Promise<VisitDraft> {
    const waiting = Object.entries(from.seen).flatMap(([findingId, one]) =>
      one.outcome ? one.photos.filter((photo) => !photo.photoId).map((photo) => ({ findingId, photo })) : [],
    );
    let now = from;
    for (const [at, { findingId, photo }] of waiting.entries()) {
      const file = await draftFileOf(personId, photo);
      if (!file)
        throw new Incomplete(`${photo.name} is no longer on this device. Take it out and choose it again.`);
      const form = new FormData();
      form.append('file', file, file.name);
      const answer = await upload('uploadPhotos', survey.id, form, (share) =>
        onShare((at + share) / waiting.length),
      );
      const photoId = answer.items[0]?.id ?? null;
      const noted = (seen: SeenDraft): SeenDraft => ({
        ...seen,
        photos: seen.photos.map((one) => (one.id === photo.id ? { ...one, photoId } : one)),
      });
      setSeen(findingId, noted);
      now = { ...now, seen: { ...now.seen, [findingId]: noted(now.seen[findingId] ?? unseen) } };
    }
    return now;
  }
  async function forget() {
    const ids = Object.values(value?.seen ?? {}).flatMap((one) => one.photos.map((photo) => photo.id));
    await draft.clear();
    await dropDraftFiles(personId, ids);
  }
  const set = (part: Partial<VisitDraft>) => change((now) => ({ ...now, ...part }));
  return {
    ...{ personId, value, begun, safe: draft.safe, keeping: keeping > 0, trouble },
    ...{ set, setSeen, addPhotos, takeOut, sendPhotos, forget },
  };
}
