import { navigate, useBrowserLocation } from 'wouter/use-browser-location';

export type Go = () => void;
type Guard = (go: Go) => void;
let guard: Guard | null = null;

/** Asks this before the next link is followed; null lets every link through. */
export function setGuard(next: Guard | null) {
  guard = next;
}

const guardedNavigate: typeof navigate = (to, options) => {
  const go = () => navigate(to, options);
  if (guard) guard(go);
  else go();
};

/** The browser's location, but links ask first while something is unsaved. */
export const useGuardedLocation: typeof useBrowserLocation = (options) => {
  const [path] = useBrowserLocation(options);
  return [path, guardedNavigate];
};
