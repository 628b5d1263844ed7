import { useEffect, useRef, useSyncExternalStore } from 'react';

/**
 * Keys of the drafting desk. None is a letter, so that none types anything or is taken by a screen reader that reads
 * by single letters; none is one of the browsers' own or of a screen reader (theirs go with Insert, Caps Lock,
 * Control and Option, or with arrow keys).
 */
export const keys = {
  'record-next': {
    shown: 'Ctrl + Enter',
    does: 'Save the finding and record the next one; from the list of findings, record one',
    is: (e: KeyboardEvent) => e.key === 'Enter' && (e.ctrlKey || e.metaKey) && !e.shiftKey && !e.altKey,
  },
  'next-finding': {
    shown: 'Alt + Page Down',
    does: 'Go to the next finding; what is written is saved',
    is: (e: KeyboardEvent) => e.key === 'PageDown' && plainAlt(e) && !e.shiftKey,
  },
  'previous-finding': {
    shown: 'Alt + Page Up',
    does: 'Go to the finding before',
    is: (e: KeyboardEvent) => e.key === 'PageUp' && plainAlt(e) && !e.shiftKey,
  },
  'move-down': {
    shown: 'Alt + Shift + Page Down',
    does: 'Move the finding down in the report; in the list, the one that has the focus',
    is: (e: KeyboardEvent) => e.key === 'PageDown' && plainAlt(e) && e.shiftKey,
  },
  'move-up': {
    shown: 'Alt + Shift + Page Up',
    does: 'Move it up',
    is: (e: KeyboardEvent) => e.key === 'PageUp' && plainAlt(e) && e.shiftKey,
  },
  help: {
    shown: '?',
    does: 'Show this sheet, when no text is being written',
    is: (e: KeyboardEvent) => e.key === '?' && !e.ctrlKey && !e.metaKey && !e.altKey && !isWriting(e.target),
  },
} as const satisfies Record<string, { shown: string; does: string; is: (e: KeyboardEvent) => boolean }>;

export type KeyName = keyof typeof keys;

function plainAlt(e: KeyboardEvent): boolean {
  return e.altKey && !e.ctrlKey && !e.metaKey;
}

function isWriting(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement && target.closest('input, textarea, select, [contenteditable]') !== null
  );
}

/** What each key does here, told which element had the focus. */
export type KeyActions = Partial<Record<KeyName, (at: Element | null) => void>>;

/** Listens for keys while the page is shown; nothing happens behind an open sheet, or when keys are switched off. */
export function useKeys(actions: KeyActions) {
  const on = useKeysOn();
  const last = useRef(actions);
  last.current = actions;
  useEffect(() => {
    if (!on) return;
    const listen = (event: KeyboardEvent) => {
      // Not what a hand pressed: a list that is worked from its search field sends itself copies of the keys.
      if (!event.isTrusted || event.defaultPrevented || event.isComposing) return;
      const at = event.target instanceof Element ? event.target : null;
      if (at?.closest('[role="dialog"], [role="alertdialog"]')) return;
      for (const name of Object.keys(last.current) as KeyName[]) {
        if (!keys[name].is(event)) continue;
        event.preventDefault();
        event.stopPropagation();
        // A key held down does a thing once.
        if (!event.repeat) last.current[name]?.(at);
        return;
      }
    };
    // Before the fields: some of them would take Enter for themselves.
    window.addEventListener('keydown', listen, { capture: true });
    return () => window.removeEventListener('keydown', listen, { capture: true });
  }, [on]);
}

const switchedOff = 'keys-switched-off';
const listeners = new Set<() => void>();

/** Whether the desk's keys are used in this browser. */
export function useKeysOn(): boolean {
  return useSyncExternalStore(subscribe, () => localStorage.getItem(switchedOff) === null);
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function setKeysOn(on: boolean) {
  if (on) localStorage.removeItem(switchedOff);
  else localStorage.setItem(switchedOff, 'yes');
  for (const listener of listeners) listener();
}
