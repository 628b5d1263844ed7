import { etagOf } from '@garboard/contract/client';
import type { Coverage, CoverageItem } from '@garboard/contract/coverage';
import type { Reached } from '@garboard/trade/coverage';
import { reachNeedsReason } from '@garboard/trade/coverage';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { same } from '../../app/merge.ts';

export interface AnswerDraft {
  reached: Reached | null;
  reason: string;
  lookedFrom: string;
}

export const answerOf = ({ reached, reason, lookedFrom }: CoverageItem): AnswerDraft => ({
  reached,
  reason,
  lookedFrom,
});

/** As the server keeps it, so that a space at the end is no change. */
const kept = (draft: AnswerDraft): AnswerDraft => ({
  reached: draft.reached,
  reason: draft.reason.normalize('NFC').trim(),
  lookedFrom: draft.lookedFrom.normalize('NFC').trim(),
});

/** How long after the last key an answer is saved, in ms. */
const pause = 600;

/**
 * The answer for one system, saved by itself shortly after it is given; one that still wants its reason waits. When
 * somebody else answered meanwhile, both answers are kept until the person has chosen.
 */
export function useAnswerDraft(surveyId: string, item: CoverageItem) {
  const queryClient = useQueryClient();
  const [base, setBase] = useState(item);
  const [draft, setDraft] = useState(() => answerOf(item));
  const [saving, setSaving] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const [theirs, setTheirs] = useState<CoverageItem | null>(null);
  const unsaved = !same(kept(draft), answerOf(base));
  // What comes from the server is shown unless something else was written here.
  if (item.version > base.version && (!unsaved || same(kept(draft), answerOf(item)))) {
    setBase(item);
    setDraft(answerOf(item));
  }
  const wantsReason = reachNeedsReason(draft.reached) && draft.reason.trim() === '';
  const ready = unsaved && !wantsReason && !saving && !theirs && !error;

  useEffect(() => {
    if (!ready) return;
    const timer = setTimeout(() => {
      setSaving(true);
      void (async () => {
        const params = { id: surveyId, system: base.system };
        try {
          const saved = await call('answerCoverage', { params, body: kept(draft), ifMatch: etagOf(base) });
          setBase(saved);
          queryClient.setQueryData<Coverage>(
            ['getCoverage', { params: { id: surveyId } }],
            (all) => all && withAnswer(all, saved),
          );
        } catch (problem) {
          if (isStatus(problem, 412)) {
            const now = await call('getCoverage', { params: { id: surveyId } }).catch(() => null);
            const other = now?.items.find((one) => one.system === base.system);
            if (other) setTheirs(other);
            else setError(problem);
          } else setError(problem);
        } finally {
          setSaving(false);
        }
      })();
    }, pause);
    return () => clearTimeout(timer);
  }, [ready, draft, base, surveyId, queryClient]);

  return {
    draft,
    set: (change: Partial<AnswerDraft>) => {
      setError(null);
      setDraft((now) => ({ ...now, ...change }));
    },
    unsaved,
    wantsReason,
    saving,
    error,
    retry: () => setError(null),
    theirs,
    /** Ends the disagreement: with their answer, or with ours on top of it. */
    settle: (side: 'mine' | 'theirs') => {
      if (!theirs) return;
      setBase(theirs);
      if (side === 'theirs') setDraft(answerOf(theirs));
      setTheirs(null);
    },
  };
}

function withAnswer(all: Coverage, saved: CoverageItem): Coverage {
  const items = all.items.map((item) => (item.system === saved.system ? saved : item));
  const unanswered = items.filter((item) => item.asked && item.reached === null).map((item) => item.system);
  return { ...all, items, unanswered };
}
