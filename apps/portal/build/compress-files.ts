import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

const texts = /\.(html|js|css|svg|json|webmanifest)$/;

/**
 * Writes beside each text file of a built portal what is sent to browsers instead, `.br` and `.gz`: made once, it can
 * be made as small as possible. Pictures and fonts are compressed already.
 */
export async function compressFiles(dir: string): Promise<void> {
  const files = (await readdir(dir, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile() && texts.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
  await Promise.all(
    files.map(async (file) => {
      const bytes = await readFile(file);
      const params = { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
      await writeFile(`${file}.br`, await promisify(brotliCompress)(bytes, { params }));
      await writeFile(`${file}.gz`, await promisify(gzip)(bytes, { level: 9 }));
    }),
  );
}
