import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';
import { call } from './api/client.ts';
import { isStatus } from './api/problems.ts';
import { sendKept } from './capture/send-round.ts';

/** The files of the portal, put in by the build. */
declare const __SHELL__: { url: string; revision: string | null }[];

interface Lasting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface WorkerScope {
  skipWaiting(): Promise<void>;
  clients: { claim(): Promise<void> };
  addEventListener(type: 'activate', listener: (event: Lasting) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
  addEventListener(type: 'sync', listener: (event: Lasting & { tag: string }) => void): void;
}
const scope = globalThis as unknown as WorkerScope;

// Only the portal's own files, the same for everybody, are kept here; what the interface answers never is.
precacheAndRoute(__SHELL__);
cleanupOutdatedCaches();
registerRoute(
  new NavigationRoute(createHandlerBoundToURL('/index.html'), {
    denylist: [/^\/(v1|health|docs|openapi\.json|assets)(\/|$|\?)/],
  }),
);

scope.addEventListener('activate', (event) => event.waitUntil(scope.clients.claim()));

// The page says when nothing is being written and the newer version may take over.
scope.addEventListener('message', (event) => {
  if (event.data === 'take over') void scope.skipWaiting();
});

scope.addEventListener('sync', (event) => {
  if (event.tag === 'send-kept') event.waitUntil(sendWithoutPage());
});

/** Woken by the browser when there is signal: sends for whoever is signed in, unless a window does. */
async function sendWithoutPage(): Promise<void> {
  try {
    const { person } = await call('getMe', {});
    const { end } = await sendKept(person.id, { ifFree: true });
    if (end === 'no-signal') throw new TypeError('The connection was lost again.');
  } catch (error) {
    // Nobody is signed in: the page asks when it is opened.
    if (!isStatus(error, 401)) throw error;
  }
}
