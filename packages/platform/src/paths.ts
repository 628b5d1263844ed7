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
