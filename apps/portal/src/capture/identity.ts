import type { Me } from '../app/session.tsx';

const place = 'capture:person';

/** Remembers who works on this telephone, so that the page opens for them without signal. */
export function rememberPerson(me: Me): void {
  localStorage.setItem(place, JSON.stringify({ ...me, parties: [] }));
}

/** Who was signed in here last and has not signed out. */
export function lastPerson(): Me | null {
  try {
    return JSON.parse(localStorage.getItem(place) ?? 'null') as Me | null;
  } catch {
    return null;
  }
}

/** Forgets them: from now on the page asks who is there. */
export function forgetPerson(): void {
  localStorage.removeItem(place);
}
