import { useEffect, useState } from 'react';
import { useSearchParams } from 'wouter';

/**
 * Filters kept in the address, so that a list can be linked to and comes back with the back button.
 * An empty value leaves the address.
 */
export function useFilters(): [(name: string) => string, (name: string, value: string) => void] {
  const [params, setParams] = useSearchParams();
  const read = (name: string) => params.get(name) ?? '';
  const write = (name: string, value: string) =>
    setParams(
      (now) => {
        const next = new URLSearchParams(now);
        if (value) next.set(name, value);
        else next.delete(name);
        return next;
      },
      { replace: true },
    );
  return [read, write];
}

/** A search field that moves into the address a moment after the last key. */
export function useSearchField(value: string, write: (value: string) => void): [string, (v: string) => void] {
  const [typed, setTyped] = useState(value);
  useEffect(() => {
    if (typed === value) return;
    const timer = setTimeout(() => write(typed), 300);
    return () => clearTimeout(timer);
  });
  return [typed, setTyped];
}

/** A value from the address as one of the known keys, or nothing. */
export function oneOf<K extends string>(value: string, keys: readonly K[]): K | undefined {
  return keys.find((key) => key === value);
}
