import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useSyncExternalStore } from 'react';
import { onChange } from '../../capture/changes.ts';
import { listKept } from '../../capture/keep.ts';
import type { Kept, SurveyBrief } from '../../capture/kept.ts';
import type { Heard, ReadName } from '../../capture/reads.ts';
import { heard } from '../../capture/reads.ts';
import { useOnBoard } from './person.ts';

// All of it is read from the telephone, never from the network: it is there at once and without signal.
const local = { networkMode: 'always', staleTime: Number.POSITIVE_INFINITY, retry: false } as const;

/** Keeps what the pages show in step with what any window or the sender changes. */
export function useChanges(personId: string): void {
  const queryClient = useQueryClient();
  useEffect(
    () =>
      onChange((change) => {
        if (change === 'kept' || change === 'progress' || change === 'sent')
          void queryClient.invalidateQueries({ queryKey: ['kept', personId] });
        if (change === 'read') void queryClient.invalidateQueries({ queryKey: ['heard', personId] });
      }),
    [queryClient, personId],
  );
}

/** Everything kept on this telephone by the person, oldest first. */
export function useKept(): Kept[] {
  const { me } = useOnBoard();
  const personId = me.person.id;
  return useQuery({ queryKey: ['kept', personId], queryFn: () => listKept(personId), ...local }).data ?? [];
}

/** What the server said last; null when this telephone has never heard it, undefined while looking. */
export function useHeard<T>(name: ReadName, of = ''): Heard<T> | null | undefined {
  const { me } = useOnBoard();
  const personId = me.person.id;
  return useQuery({
    queryKey: ['heard', personId, name, of],
    queryFn: () => heard<T>(personId, name, of),
    ...local,
  }).data;
}

/** One survey of the list; null when it isn't in it. */
export function useBrief(surveyId: string): SurveyBrief | null | undefined {
  const surveys = useHeard<SurveyBrief[]>('surveys');
  return surveys === undefined ? undefined : (surveys?.data.find(({ id }) => id === surveyId) ?? null);
}

const subscribe = (listener: () => void) => {
  window.addEventListener('online', listener);
  window.addEventListener('offline', listener);
  return () => {
    window.removeEventListener('online', listener);
    window.removeEventListener('offline', listener);
  };
};

/** Whether the device believes that it has a network. */
export const useSignal = () => useSyncExternalStore(subscribe, () => navigator.onLine);
