import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { Plugin, ResolvedConfig } from 'vite';
import { build } from 'vite';
import { compressFiles } from './compress-files.ts';
import { contractData } from './contract-data.ts';

/** Faces of other scripts come from the system where there is no signal. */
const leftOut = /-(cyrillic|greek|vietnamese)[\w-]*\.woff2$/;

/**
 * Builds the service worker beside the portal, with the list of files that make it open without a network. A file
 * under `assets` never changes under its name; the others carry a hash of their content.
 */
export function offlineShell(): Plugin {
  let config: ResolvedConfig;
  return {
    name: 'garboard-offline-shell',
    apply: 'build',
    configResolved(resolved) {
      config = resolved;
    },
    // Not once the bundle is closed: it is closed as well after a build that failed, and then hides why.
    async writeBundle() {
      const dir = resolve(config.root, config.build.outDir);
      const files = (await readdir(dir, { recursive: true, withFileTypes: true }))
        .filter((entry) => entry.isFile() && !leftOut.test(entry.name) && entry.name !== 'sw.js')
        .map((entry) =>
          join(entry.parentPath, entry.name)
            .slice(dir.length + 1)
            .replaceAll('\\', '/'),
        )
        .sort();
      const shell = await Promise.all(
        files.map(async (file) => ({
          url: `/${file}`,
          revision: file.startsWith('assets/') ? null : hashOf(await readFile(join(dir, file))),
        })),
      );
      await build({
        configFile: false,
        root: config.root,
        logLevel: config.logLevel ?? 'warn',
        publicDir: false,
        plugins: [contractData()],
        define: { __SHELL__: JSON.stringify(shell) },
        build: {
          outDir: dir,
          emptyOutDir: false,
          target: 'es2022',
          rollupOptions: {
            input: join(config.root, 'src/service-worker.ts'),
            output: { format: 'iife', entryFileNames: 'sw.js' },
          },
        },
      });
      // Here and not in a plugin of its own, since the service worker belongs to them.
      await compressFiles(dir);
    },
  };
}

const hashOf = (content: Buffer) => createHash('sha256').update(content).digest('hex').slice(0, 16);
