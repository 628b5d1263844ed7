import type { ReportSnapshot } from '@garboard/contract/report-snapshot';

/** Markup that must be shown, never obeyed. */
export const hostileText = `<script>bad()</script></style><img src=x onerror=bad()>"'&`;

/** The snapshot with hostile markup before each text a person writes. */
export function poisoned<S extends ReportSnapshot>(snapshot: S): S {
  const kept = new Set(['id', 'kind', 'state', 'language', 'timeZone', 'paper', 'number', 'sha256']);
  const walk = (value: unknown, key: string): unknown => {
    if (Array.isArray(value)) return value.map((item) => walk(item, key));
    if (value && typeof value === 'object') {
      return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, walk(part, name)]));
    }
    const free = typeof value === 'string' && /[ A-Z@+]/.test(value) && !/^\d{4}-/.test(value);
    return free && !kept.has(key) ? `${hostileText} ${value}` : value;
  };
  return { ...snapshot, ...(walk(snapshot, '') as S), timeZone: snapshot.timeZone };
}
