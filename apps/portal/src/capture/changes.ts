/** `kept`: something was kept, sent or refused. `stop`: whoever sends must stop, the person is leaving. */
export type Change = 'kept' | 'read' | 'stop' | 'signed-out';

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
