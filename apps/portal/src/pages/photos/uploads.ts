import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useRef, useState } from 'react';
import { newIdempotencyKey, ProblemError } from '../../api/client.ts';
import { explain } from '../../api/problems.ts';
import { upload } from '../../api/upload.ts';
import { count } from '../../ui/format.ts';
import { useStatus } from '../../ui/Status.tsx';
import { shares, takeBatch } from './batches.ts';

/** One file on its way. */
export interface UploadRow {
  key: string;
  file: File;
  state: 'waiting' | 'sending' | 'stored' | 'refused' | 'interrupted';
  /** 0 to 1. */
  share: number;
  problem: string;
}

// While one request is being looked at by the server, the next keeps the line busy.
const atOnce = 2;

/** Sends photos to a survey, a few a request, and keeps each file's own progress and fate. */
export function usePhotoUploads(surveyId: string) {
  const queryClient = useQueryClient();
  const say = useStatus();
  const [rows, setRows] = useState<UploadRow[]>([]);
  const queue = useRef<UploadRow[]>([]);
  const running = useRef(0);
  const tally = useRef({ stored: 0, refused: 0, lost: 0 });

  const change = useCallback((parts: ReadonlyMap<string, Partial<UploadRow>>) => {
    setRows((now) => now.map((row) => ({ ...row, ...parts.get(row.key) })));
  }, []);

  async function send(batch: UploadRow[]) {
    const all = (part: Partial<UploadRow>) => change(new Map(batch.map((row) => [row.key, part])));
    all({ state: 'sending', share: 0, problem: '' });
    const form = new FormData();
    for (const row of batch) form.append('file', row.file, row.file.name);
    const sizes = batch.map((row) => row.file.size);
    try {
      const answer = await upload('uploadPhotos', surveyId, form, (sent) => {
        const parts = shares(sizes, sent);
        change(new Map(batch.map((row, at) => [row.key, { share: parts[at] ?? 0 }])));
      });
      settle(batch, answer.refused);
    } catch (error) {
      const refused = error instanceof ProblemError ? error.problem.errors : undefined;
      if (refused?.length) {
        settle(
          batch,
          refused.map((one) => ({ name: one.pointer, problem: one.detail })),
        );
        return;
      }
      if (error instanceof ProblemError) {
        const { title, detail } = explain(error);
        tally.current.refused += batch.length;
        all({ state: 'refused', problem: detail || title });
        return;
      }
      tally.current.lost += batch.length;
      all({ state: 'interrupted', problem: '' });
    }
  }

  function settle(batch: UploadRow[], refused: readonly { name: string; problem: string }[]) {
    // Two files of one name in a batch have as many refusals as were refused, in their order.
    const left = [...refused];
    const parts = new Map<string, Partial<UploadRow>>();
    for (const row of batch) {
      const at = left.findIndex((one) => one.name === row.file.name);
      const [one] = at < 0 ? [] : left.splice(at, 1);
      parts.set(row.key, one ? { state: 'refused', problem: one.problem } : { state: 'stored', share: 1 });
      tally.current[one ? 'refused' : 'stored'] += 1;
    }
    change(parts);
  }

  async function work() {
    running.current += 1;
    for (let batch = takeBatch(queue.current); batch.length; batch = takeBatch(queue.current)) {
      await send(batch);
      void queryClient.invalidateQueries({ queryKey: ['listPhotos'] });
    }
    running.current -= 1;
    if (running.current > 0) return;
    const { stored, refused, lost } = tally.current;
    tally.current = { stored: 0, refused: 0, lost: 0 };
    const rest = [refused ? `${refused} refused` : '', lost ? `${lost} not sent` : ''].filter(Boolean);
    say(`${[count(stored, 'photo stored', 'photos stored'), ...rest].join(', ')}.`);
    for (const name of ['getSurvey', 'listSurveys', 'listEvents']) {
      void queryClient.invalidateQueries({ queryKey: [name] });
    }
  }

  function enqueue(more: UploadRow[]) {
    queue.current.push(...more);
    while (running.current < atOnce && queue.current.length) void work();
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
      change(new Map(again.map((row) => [row.key, { state: 'waiting', problem: '' }])));
      enqueue(again);
    },
    clear: () => setRows((now) => now.filter((row) => row.state === 'waiting' || row.state === 'sending')),
  };
}
