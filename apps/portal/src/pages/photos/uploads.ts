import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useRef, useState } from 'react';
import { newIdempotencyKey } from '../../api/client.ts';
import { explain } from '../../api/problems.ts';
import { upload } from '../../api/upload.ts';
import { count } from '../../ui/format.ts';
import { useStatus } from '../../ui/Status.tsx';

/** One file on its way. */
export interface UploadRow {
  key: string;
  file: File;
  state: 'waiting' | 'sending' | 'stored' | 'refused' | 'interrupted';
  /** 0 to 1. */
  share: number;
  problem: string;
}

// Enough to keep a line busy; more would only make each bar crawl.
const atOnce = 3;

/** Sends photos to a survey, a request a file, so that each has its own progress and its own fate. */
export function usePhotoUploads(surveyId: string) {
  const queryClient = useQueryClient();
  const say = useStatus();
  const [rows, setRows] = useState<UploadRow[]>([]);
  const queue = useRef<UploadRow[]>([]);
  const running = useRef(0);
  const tally = useRef({ stored: 0, refused: 0 });

  const change = useCallback((key: string, part: Partial<UploadRow>) => {
    setRows((now) => now.map((row) => (row.key === key ? { ...row, ...part } : row)));
  }, []);

  async function sendOne(row: UploadRow) {
    change(row.key, { state: 'sending', share: 0, problem: '' });
    const form = new FormData();
    form.append('file', row.file, row.file.name);
    try {
      const answer = await upload('uploadPhotos', surveyId, form, (share) => change(row.key, { share }));
      const refused = answer.refused[0];
      if (refused) refuse(row, refused.problem);
      else {
        tally.current.stored += 1;
        change(row.key, { state: 'stored', share: 1 });
      }
    } catch (error) {
      if (error instanceof TypeError) {
        change(row.key, { state: 'interrupted', problem: 'The connection was lost.' });
        return;
      }
      const { title, detail, fields } = explain(error);
      refuse(row, fields[0]?.replace(`${row.file.name}: `, '') ?? (detail || title));
    }
  }

  function refuse(row: UploadRow, problem: string) {
    tally.current.refused += 1;
    change(row.key, { state: 'refused', problem });
  }

  async function work() {
    running.current += 1;
    for (let row = queue.current.shift(); row; row = queue.current.shift()) await sendOne(row);
    running.current -= 1;
    if (running.current > 0) return;
    const { stored, refused } = tally.current;
    tally.current = { stored: 0, refused: 0 };
    say(`${count(stored, 'photo')} stored${refused ? `, ${refused} refused` : ''}.`);
    for (const name of ['listPhotos', 'getSurvey', 'listEvents']) {
      void queryClient.invalidateQueries({ queryKey: [name] });
    }
  }

  function enqueue(more: UploadRow[]) {
    queue.current.push(...more);
    while (running.current < atOnce && queue.current.length > running.current) void work();
  }

  return {
    rows,
    busy: rows.some((row) => row.state === 'waiting' || row.state === 'sending'),
    add(files: File[]) {
      const more = files.map(
        (file): UploadRow => ({ key: newIdempotencyKey(), file, state: 'waiting', share: 0, problem: '' }),
      );
      setRows((now) => [...now.filter((row) => row.state !== 'stored'), ...more]);
      enqueue(more);
    },
    retry() {
      const again = rows.filter((row) => row.state === 'interrupted');
      for (const row of again) change(row.key, { state: 'waiting', problem: '' });
      enqueue(again);
    },
    clear: () => setRows((now) => now.filter((row) => row.state === 'waiting' || row.state === 'sending')),
  };
}
