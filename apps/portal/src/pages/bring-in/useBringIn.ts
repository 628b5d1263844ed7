import type { SurveyImportRecord } from '@garboard/contract/imports';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { upload } from '../../api/upload.ts';
import { useFilters } from '../../app/filters.ts';
import { useStatus } from '../../ui/Status.tsx';
import type { Chosen } from './chosen.ts';
import { broughtIn, type Choices } from './Preview.tsx';
import { type Settled, sendPhotos } from './sendPhotos.ts';

const underWay = (record: SurveyImportRecord | undefined) =>
  record?.state === 'queued' || record?.state === 'running';

/** Looking at a sheet, sending its photos and having it brought in; which one is kept in the address. */
export function useBringIn(surveyId: string) {
  const [filter, setFilter] = useFilters();
  const id = filter('sheet');
  const photos = useRef<Chosen['photos']>(new Map());
  const settled = useRef(new Map<string, Settled>());
  const [sent, setSent] = useState(0);
  /** Of the file being sent to be looked at, from 0 to 1. */
  const [share, setShare] = useState(0);
  const record = useAnswer(
    'getImport',
    { params: { id } },
    { enabled: id !== '', again: (answer) => (underWay(answer) ? 1000 : false) },
  );
  useSayWhenDone(record.data);

  const look = useAction({
    // Files say nothing in JSON: `of` tells one attempt from another with other files.
    run: async ({ chosen, sheet }: { chosen: Chosen; sheet: File | undefined; of: string }, key) => {
      const form = new FormData();
      for (const file of [sheet, chosen.zips[0]]) if (file) form.append('file', file, file.name);
      setShare(0);
      const made = await upload('createImport', surveyId, form, setShare, { 'idempotency-key': key });
      photos.current = chosen.photos;
      settled.current = new Map();
      setSent(0);
      if (chosen.photos.size) await namePhotos(made.id, chosen.photos, settled.current);
      return made;
    },
    done: 'The sheet was read.',
    touches: ['getImport'],
    onDone: (made) => setFilter('sheet', made.id),
  });
  const start = useAction({
    run: async (choices: Choices) => {
      if (photos.current.size) {
        await sendPhotos(surveyId, photos.current, settled.current, () => setSent(settled.current.size));
        await namePhotos(id, photos.current, settled.current);
      }
      return call('startImport', { params: { id }, body: choices });
    },
    touches: ['getImport'],
  });
  const again = useAction({
    run: async () => {
      if (record.data?.state === 'checked') await call('discardImport', { params: { id } });
    },
    onDone: () => setFilter('sheet', ''),
  });
  // Photos that were only chosen are gone after a reload: they have to be chosen anew.
  const lost =
    record.data?.state === 'checked' &&
    !record.data.zipName &&
    record.data.counts.photos > record.data.counts.photosDone &&
    photos.current.size === 0;
  return {
    ...{ record: id && !lost ? record : null, start, again, lost, share, sent },
    look: {
      ...look,
      run: (chosen: Chosen, sheet: File | undefined) =>
        look.run({ chosen, sheet, of: signature(chosen, sheet) }),
    },
    photos: photos.current.size,
    sending: start.busy && photos.current.size > 0,
    underWay: underWay(record.data),
  };
}

const signature = ({ zips }: Chosen, sheet: File | undefined) =>
  [sheet, ...zips].map((file) => `${file?.name} ${file?.size} ${file?.lastModified}`).join();

function namePhotos(id: string, photos: Chosen['photos'], settled: ReadonlyMap<string, Settled>) {
  const items = [...photos.keys()].map((name) => ({ name, ...settled.get(name) }));
  return call('nameImportPhotos', { params: { id }, body: { items } });
}

/** Says in the status line that it is done, and refreshes what shows findings and photos. */
function useSayWhenDone(record: SurveyImportRecord | undefined) {
  const say = useStatus();
  const queryClient = useQueryClient();
  const before = useRef(record?.state);
  useEffect(() => {
    const was = before.current;
    before.current = record?.state;
    if (record?.state !== 'done' || !was || was === 'done') return;
    say(`${broughtIn(record)} brought in.`);
    const touched = new Set([
      'getSurvey',
      'listSurveys',
      'listJobs',
      'listFindings',
      'listPhotos',
      'listEvents',
    ]);
    void queryClient.invalidateQueries({ predicate: ({ queryKey }) => touched.has(String(queryKey[0])) });
  }, [record, say, queryClient]);
}
