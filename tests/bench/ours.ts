// Our server as `npm start` runs it, in a process of its own; it says its port to whom started it.
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildApp } from '@garboard/api/app';
import { openDatabase } from '@garboard/db/database';
import { openLogger } from '@garboard/platform/logger';
import { openMetrics } from '@garboard/platform/metrics';
import { openObjectStore } from '@garboard/platform/object-store';

const { OURS_DATABASE_URL: url, OURS_DATA_DIR: dataDir } = process.env;
if (!url || !dataDir) throw new Error('OURS_DATABASE_URL and OURS_DATA_DIR say where everything is.');
const app = await buildApp({
  env: { publicUrl: 'http://127.0.0.1:3000', dataDir, secret: 'of a bench', webhookAllowPrivate: false },
  db: openDatabase(url),
  store: await openObjectStore(pathToFileURL(join(dataDir, 'objects')).href, dataDir),
  // Every request is written down and counted, as in service; the lines go to /dev/null.
  log: openLogger('api', 'info'),
  metrics: openMetrics('api'),
  clock: () => new Date(),
  previews: { add: () => Promise.reject(new Error('No previews here.')) },
  probes: {},
  portalDir: null,
});
await app.listen({ port: 0, host: '127.0.0.1' });
process.send?.((app.server.address() as AddressInfo).port);
process.on('disconnect', () => process.exit());
