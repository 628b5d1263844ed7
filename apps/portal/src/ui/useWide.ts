import { useSyncExternalStore } from 'react';

const query = window.matchMedia('(min-width: 60rem)');

function subscribe(onChange: () => void): () => void {
  query.addEventListener('change', onChange);
  return () => query.removeEventListener('change', onChange);
}

/**
 * Whether there is room for a second column, by the width that the style sheets go by too. For what is better not made
 * than hidden: a long list costs a telephone as much when nobody sees it.
 */
export const useWide = (): boolean => useSyncExternalStore(subscribe, () => query.matches);
