import { repositoryRoot } from '@garboard/platform/paths';
import { build } from 'esbuild';
import { expect, test } from 'vitest';

// The computations, their drawings and the units library are large, and the server does them: a browser loads types
// of them only. The boat on which findings are placed is small and is drawn where one points at it.
const boat = ['boat-outline', 'boat-places', 'boat-profile', 'style', 'svg'];

test('what a browser loads holds no computation of worksheets', async () => {
  const { metafile } = await build({
    absWorkingDir: repositoryRoot(),
    entryPoints: ['apps/portal/src/main.tsx'],
    bundle: true,
    write: false,
    metafile: true,
    outdir: 'unwritten',
    format: 'esm',
    loader: { '.woff': 'empty', '.woff2': 'empty', '.css': 'empty' },
    logLevel: 'silent',
  });
  const files = Object.keys(metafile.inputs);
  expect(files).toContain('packages/contract/src/worksheets.ts');
  expect(
    files.filter(
      (file) =>
        /trade\/src\/(worksheets|drawing)\/|node_modules\/mathjs\//.test(file) &&
        !boat.some((name) => file.endsWith(`trade/src/drawing/${name}.ts`)),
    ),
  ).toEqual([]);
});
