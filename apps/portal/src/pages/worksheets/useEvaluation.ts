import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';

/** How long a pause in typing is, in milliseconds. */
const pause = 250;

/** The result of the inputs as they stand, worked by the server a moment after the last keystroke. */
export function useEvaluation(kind: string, inputs: Record<string, unknown>) {
  const wanted = JSON.stringify(inputs);
  const [settled, setSettled] = useState(wanted);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(wanted), pause);
    return () => clearTimeout(timer);
  }, [wanted]);
  const answer = useQuery({
    queryKey: ['evaluateWorksheet', kind, settled],
    queryFn: ({ signal }) =>
      call('evaluateWorksheet', {
        params: { kind },
        body: { inputs: JSON.parse(settled) as Record<string, unknown> },
        signal,
      }),
    // Nothing to work while nothing is written.
    enabled: settled !== '{}',
    placeholderData: keepPreviousData,
    // The same inputs give the same result; a refusal won't change by asking again.
    staleTime: Number.POSITIVE_INFINITY,
    retry: (failures, error) => failures < 2 && !isStatus(error, 422),
  });
  return {
    result: answer.error ? undefined : answer.data,
    error: answer.error,
    behind: settled !== wanted || answer.isFetching,
  };
}
