// The least that can be done with an upload: its bytes through SHA-256 into a file, behind a bare Fastify route.
// Arguments: port, folder, `flush` or `no-flush` (whether the file is on the disk before the answer).
import { createHash, randomUUID } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import Fastify from 'fastify';

const [port, folder = '', flush] = process.argv.slice(2);
const app = Fastify();
app.addContentTypeParser('application/octet-stream', (_request, payload, done) => done(null, payload));
app.post('/', async (request) => {
  const hash = createHash('sha256');
  const measure = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      hash.update(chunk);
      done(null, chunk);
    },
  });
  const file = createWriteStream(join(folder, randomUUID()), { flags: 'wx', flush: flush === 'flush' });
  await pipeline(request.body as Readable, measure, file);
  return { sha256: hash.digest('hex') };
});
process.once('SIGTERM', () => void app.close().then(() => process.exit(0)));
await app.listen({ port: Number(port), host: '127.0.0.1' });
