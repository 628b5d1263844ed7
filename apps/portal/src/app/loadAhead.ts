/** Pages that people come to from outside, by links and bookmarks; the most particular first. */
const arrivals: readonly (readonly [RegExp, () => Promise<unknown>])[] = [
  [/^\/surveys\/[^/]+\/findings$/, () => import('../pages/findings/Findings.tsx')],
  [/^\/surveys\/[^/]+\/photos$/, () => import('../pages/photos/Photos.tsx')],
  [/^\/surveys\/[^/]+\/reading$/, () => import('../pages/reading/Reading.tsx')],
  [/^\/surveys\/[^/]+$/, () => import('../pages/surveys/Survey.tsx')],
  [/^\/(surveys)?$/, () => import('../pages/jobs/JobList.tsx')],
  [/^\/recommendations$/, () => import('../pages/recommendations/Recommendations.tsx')],
];

/**
 * Begins to load the page at this address while the server is still asked who is here: on a slow line that is a round
 * trip less. What isn't shown after all, as when somebody has to sign in first, is there for afterwards.
 */
export function loadAhead(path: string): void {
  const [, load] = arrivals.find(([pattern]) => pattern.test(path)) ?? [];
  // The page itself tells what to do when it can't be loaded.
  load?.().catch(() => undefined);
}
