import { repositoryRoot } from '@garboard/platform/paths';
import { build } from 'esbuild';
import { expect, test } from 'vitest';

// The computations and their units library are large, and the server does them: a browser loads types of them only.
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
