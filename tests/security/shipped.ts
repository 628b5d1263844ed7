import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { repositoryRoot } from '@garboard/platform/paths';

interface Locked {
  version?: string;
  license?: string;
  integrity?: string;
  link?: boolean;
  resolved?: string;
  dependencies?: Record<string, string>;
  optionalDependencies?: Record<string, string>;
  peerDependencies?: Record<string, string>;
  peerDependenciesMeta?: Record<string, { optional?: boolean }>;
}

/** Each entry of package-lock.json by its place, such as `node_modules/pg`. */
export function readLock(): Record<string, Locked> {
  const text = readFileSync(join(repositoryRoot(), 'package-lock.json'), 'utf8');
  return JSON.parse(text).packages;
}

/** What runs or is served: the servers, the portal's bundle and the demonstration, not tools and tests. */
export const shippedWorkspaces = ['', 'apps/api', 'apps/worker', 'apps/portal', 'seed'];

export interface Shipped {
  name: string;
  version: string;
  licence: string;
}

/** Where a package that asks for `name` from `from` finds it: in its own folder, else in one above. */
function placeOf(lock: Record<string, Locked>, from: string, name: string): string | undefined {
  for (let folder = from; ; folder = folder.slice(0, Math.max(0, folder.lastIndexOf('/')))) {
    const place = `${folder ? `${folder}/` : ''}node_modules/${name}`;
    if (lock[place]) return place;
    if (folder === '') return undefined;
  }
}

/** Every package that what ships depends on, by name, then version; for all platforms. */
export function shippedPackages(lock = readLock()): Shipped[] {
  const seen = new Set<string>();
  const visit = (place: string) => {
    const entry = lock[place];
    if (!entry || seen.has(place)) return;
    seen.add(place);
    if (entry.link) return visit(entry.resolved ?? '');
    const peers = Object.keys(entry.peerDependencies ?? {}).filter(
      (name) => !entry.peerDependenciesMeta?.[name]?.optional,
    );
    for (const name of [
      ...Object.keys(entry.dependencies ?? {}),
      ...Object.keys(entry.optionalDependencies ?? {}),
      ...peers,
    ]) {
      const found = placeOf(lock, place, name);
      if (found) visit(found);
    }
  };
  for (const workspace of shippedWorkspaces) visit(workspace);
  const all = new Map<string, Shipped>();
  for (const place of seen) {
    const at = place.lastIndexOf('node_modules/');
    const entry = lock[place];
    if (at < 0 || !entry || entry.link) continue;
    const name = place.slice(at + 'node_modules/'.length);
    const version = entry.version ?? '';
    all.set(`${name}@${version}`, { name, version, licence: entry.license ?? 'none stated' });
  }
  return [...all.values()].sort(
    (a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0) || a.version.localeCompare(b.version),
  );
}

/** The list as it is committed. */
export function licencesPage(shipped = shippedPackages()): string {
  const counts = new Map<string, number>();
  for (const { licence } of shipped) counts.set(licence, (counts.get(licence) ?? 0) + 1);
  const summary = [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return [
    '# Licences of what ships',
    '',
    'Made by `npm run licences` from package-lock.json, as each package states it there: everything that the servers,',
    'the portal and the demonstration depend on, for all platforms; tools and tests are left out. A test fails when this',
    'is behind, or a licence is not among those allowed (`tests/security/supply.test.ts`).',
    '',
    ...table(
      ['Licence', 'Packages'],
      summary.map(([licence, count]) => [licence, String(count)]),
    ),
    '',
    ...table(
      ['Package', 'Version', 'Licence'],
      shipped.map(({ name, version, licence }) => [name, version, licence]),
    ),
    '',
  ].join('\n');
}

/** A table with its columns in line, as our formatter has them. */
function table(heads: string[], rows: string[][]): string[] {
  const widths = heads.map((head, n) => Math.max(head.length, ...rows.map((row) => row[n]?.length ?? 0)));
  const line = (cells: string[]) => `| ${cells.map((cell, n) => cell.padEnd(widths[n] ?? 0)).join(' | ')} |`;
  return [line(heads), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)];
}

export const licencesFile = join(repositoryRoot(), 'packages/platform/licences.md');
