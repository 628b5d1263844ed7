import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

let found: string | undefined;

/**
 * The repository's root: the nearest folder above this file whose package.json declares workspaces.
 * @throws Error when there is none, which means that the tree was copied in part.
 */
export function repositoryRoot(): string {
  found ??= findRoot(dirname(fileURLToPath(import.meta.url)));
  return found;
}

/** The version of the whole, as the repository's package.json states it. */
export function productVersion(): string {
  const manifest = readFileSync(join(repositoryRoot(), 'package.json'), 'utf8');
  return String((JSON.parse(manifest) as { version?: unknown }).version);
}

function findRoot(start: string): string {
  for (let folder = start; ; folder = dirname(folder)) {
    const manifest = join(folder, 'package.json');
    if (existsSync(manifest)) {
      const content: { workspaces?: unknown } = JSON.parse(readFileSync(manifest, 'utf8'));
      if (content.workspaces !== undefined) return folder;
    }
    if (folder === dirname(folder)) {
      throw new Error(
        `No package.json with workspaces above ${start}: run from a whole copy of the repository.`,
      );
    }
  }
}
