import { whenNothingWritten } from './writing.ts';

/** `ready`: a newer version waits. `older`: another window has taken it, and this one still runs the older. */
export type Newer = 'none' | 'ready' | 'older';

let state: Newer = 'none';
let registration: ServiceWorkerRegistration | null = null;
const listeners = new Set<() => void>();

const set = (next: Newer) => {
  state = next;
  for (const listener of listeners) listener();
};

/** For `useSyncExternalStore`: whether a newer version of the portal is at hand. */
export const newerVersion = {
  subscribe(listener: () => void) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  now: () => state,
};

/**
 * Takes the newer version when nothing is being written in any window, and loads the page anew.
 *
 * @returns false when something is being written
 */
export function takeNewer(): Promise<boolean> {
  return whenNothingWritten(() => {
    if (state === 'older') location.reload();
    else registration?.waiting?.postMessage('take over');
  });
}

const lookEvery = 3_600_000;

/** Keeps the portal's files on this device, so that it opens without a network, and looks for newer ones. */
export async function keepShell(): Promise<void> {
  if (registration) return;
  const hadOne = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    // The very first one only begins to look after this page.
    if (!hadOne && state === 'none') return;
    set('older');
    void takeNewer();
  });
  registration = await navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' });
  const { waiting } = registration;
  if (waiting && navigator.serviceWorker.controller) set('ready');
  registration.addEventListener('updatefound', () => {
    const coming = registration?.installing;
    coming?.addEventListener('statechange', () => {
      if (coming.state === 'installed' && navigator.serviceWorker.controller) set('ready');
    });
  });
  const look = () => void registration?.update().catch(() => undefined);
  window.setInterval(look, lookEvery);
  document.addEventListener('visibilitychange', () => {
    // Out of sight is the moment at which nobody is disturbed.
    if (document.visibilityState === 'hidden') void (state === 'none' ? null : takeNewer());
    else look();
  });
}
