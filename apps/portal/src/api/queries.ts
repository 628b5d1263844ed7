import {
  keepPreviousData,
  useInfiniteQuery,
  useMutation,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import { useRef } from 'react';
import { useStatus } from '../ui/Status.tsx';
import type { Answer, CallArgs, Item, ListName, RouteName } from './client.ts';
import { call, newIdempotencyKey, ProblemError } from './client.ts';

/** What is worked out from the same rows, and so is as old as these. */
const alongWith: Partial<Record<RouteName, readonly RouteName[]>> = {
  listRecommendations: ['countRecommendations', 'listCoveredVessels'],
  listSurveys: ['listJobs', 'countJobs'],
};

interface AnswerOptions<N extends RouteName> {
  enabled?: boolean;
  /** Asks anew although an answer is at hand; a form waits for it (`isFetchedAfterMount`) before it is filled. */
  anew?: boolean;
  /** Milliseconds to the next look, or false to stop, judged by the last answer. */
  again?: (answer: Answer<N> | undefined) => number | false;
}

/** One answer of the API, kept fresh. */
export function useAnswer<N extends RouteName>(name: N, args: CallArgs<N>, options: AnswerOptions<N> = {}) {
  return useQuery({
    queryKey: [name, args],
    queryFn: ({ signal }) => call(name, { ...args, signal }),
    enabled: options.enabled ?? true,
    refetchOnMount: options.anew ? 'always' : true,
    refetchInterval: (query) => options.again?.(query.state.data as Answer<N> | undefined) ?? false,
  });
}

/** A list of the API, page by page; `all` fetches on by itself until the last page. */
export function useList<N extends ListName>(
  name: N,
  args: CallArgs<N>,
  options: { enabled?: boolean; again?: (items: Item<N>[]) => number | false } = {},
) {
  type Page = { items: Item<N>[]; next: string | null };
  const given = args as { query?: Record<string, unknown> };
  const list = useInfiniteQuery({
    queryKey: [name, args],
    initialPageParam: undefined as string | undefined,
    queryFn: async ({ pageParam, signal }) => {
      const query = { ...given.query, cursor: pageParam };
      return (await call(name, { ...args, query, signal } as CallArgs<N>)) as unknown as Page;
    },
    getNextPageParam: (page) => page.next ?? undefined,
    enabled: options.enabled ?? true,
    placeholderData: keepPreviousData,
    refetchInterval: (query) =>
      options.again?.(query.state.data?.pages.flatMap((page) => page.items) ?? []) ?? false,
  });
  return {
    items: list.data?.pages.flatMap((page) => page.items),
    /** The first page as it came, for what it says beside its items. */
    first: list.data?.pages[0] as unknown as Answer<N> | undefined,
    /** Whether the items answer what was asked before, shown until the answer to this has come. */
    behind: list.isPlaceholderData,
    error: list.error,
    hasMore: list.hasNextPage,
    fetchingMore: list.isFetchingNextPage,
    more: () => void list.fetchNextPage(),
    retry: () => void list.refetch(),
  };
}

/** The whole of a list that is short by nature (a survey's findings, its photos), in one array. */
export function useWholeList<N extends ListName>(
  name: N,
  args: CallArgs<N>,
  options: { enabled?: boolean; again?: (items: Item<N>[]) => number | false } = {},
) {
  return useQuery({
    queryKey: [name, args, 'whole'],
    queryFn: async ({ signal }) => {
      const given = args as { query?: Record<string, unknown> };
      const items: Item<N>[] = [];
      let cursor: string | null | undefined;
      do {
        const query = { limit: 200, ...given.query, cursor: cursor ?? undefined };
        const page = (await call(name, { ...args, query, signal } as CallArgs<N>)) as unknown as {
          items: Item<N>[];
          next: string | null;
        };
        items.push(...page.items);
        cursor = page.next;
      } while (cursor);
      return items;
    },
    enabled: options.enabled ?? true,
    refetchInterval: (query) => options.again?.(query.state.data ?? []) ?? false,
  });
}

/**
 * Something a person does: runs once at a time, says in the status line that it is done, and refreshes what it
 * touches. The key given to `run` stays the same while the very same input is tried again after a lost
 * connection, so that nothing is made twice.
 */
export function useAction<Input, Output>(settings: {
  run: (input: Input, idempotencyKey: string) => Promise<Output>;
  done?: string | ((output: Output, input: Input) => string);
  touches?: readonly RouteName[];
  onDone?: (output: Output, input: Input) => void;
  onRefused?: (error: unknown) => void;
}) {
  const queryClient = useQueryClient();
  const say = useStatus();
  const attempt = useRef({ of: '', key: '' });
  const mutation = useMutation({
    // A device that believes itself without a network tries all the same: the failure is told, not waited out in silence.
    networkMode: 'always',
    mutationFn: async (input: Input) => {
      const of = JSON.stringify(input) ?? '';
      if (attempt.current.of !== of || !attempt.current.key)
        attempt.current = { of, key: newIdempotencyKey() };
      try {
        const output = await settings.run(input, attempt.current.key);
        attempt.current.key = '';
        return output;
      } catch (error) {
        if (error instanceof ProblemError) attempt.current.key = '';
        throw error;
      }
    },
    onError: (error) => settings.onRefused?.(error),
    onSuccess: async (output, input) => {
      const touches = settings.touches ?? [];
      const touched = new Set<unknown>(touches.flatMap((name) => [name, ...(alongWith[name] ?? [])]));
      const fresh = queryClient.invalidateQueries({ predicate: (query) => touched.has(query.queryKey[0]) });
      const { done } = settings;
      if (done) say(typeof done === 'string' ? done : done(output, input));
      if (settings.onDone) settings.onDone(output, input);
      else await fresh;
    },
  });
  return {
    run: (input: Input) => {
      if (!mutation.isPending) mutation.mutate(input);
    },
    busy: mutation.isPending,
    error: mutation.error,
    /** What the last one that succeeded was given and answered, until the next or `clear`. */
    output:
      mutation.data === undefined || mutation.variables === undefined
        ? undefined
        : { input: mutation.variables, output: mutation.data },
    clear: mutation.reset,
  };
}
