/** Whether something couldn't be kept because the telephone gives this page no more room. */
export function isFull(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'QuotaExceededError';
}

export interface Space {
  used: number;
  free: number;
  /** Whether the browser promised not to clear what is kept when it runs short. */
  lasting: boolean;
}

/** How much room there is, as far as the browser says. */
export async function spaceLeft(): Promise<Space | null> {
  if (!navigator.storage?.estimate) return null;
  const { usage = 0, quota = 0 } = await navigator.storage.estimate();
  const lasting = (await navigator.storage.persisted?.()) ?? false;
  return { used: usage, free: Math.max(0, quota - usage), lasting };
}

/** Asks the browser once to keep what is here until it is removed by us. */
export async function askToLast(): Promise<void> {
  if (!navigator.storage?.persist) return;
  if (!(await navigator.storage.persisted())) await navigator.storage.persist();
}
