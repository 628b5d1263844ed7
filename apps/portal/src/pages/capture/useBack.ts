import { useState } from 'react';

let lastPlace = '/capture';

/** Notes where on board one is, for the way back from the list. */
export function notePlace(path: string): void {
  if (path !== '/capture/kept') lastPlace = path;
}

/** Back to where one was. */
export function useBack(): { href: string; label: string } {
  const [href] = useState(lastPlace);
  return { href, label: href === '/capture' ? 'the surveys' : 'where you were' };
}
