/**
 * `kept`: somebody kept, corrected or removed something. `progress` and `sent`: the sender got on. `read`: the server
 * was heard. `stop`: whoever sends must stop, the person is leaving. `signed-out`: the session has ended.
 */
export type Change = 'kept' | 'progress' | 'sent' | 'read' | 'stop' | 'signed-out';

const name = 'garboard-capture';
let speaker: BroadcastChannel | null = null;

/** Tells every window and the service worker, this window's own listeners too. */
export function announce(change: Change): void {
  speaker ??= new BroadcastChannel(name);
  speaker.postMessage(change);
}

/** Listens until the function returned is called. */
export function onChange(listener: (change: Change) => void): () => void {
  const channel = new BroadcastChannel(name);
  channel.onmessage = (event: MessageEvent<Change>) => listener(event.data);
  return () => channel.close();
}
