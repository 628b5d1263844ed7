// The floor of the reads and writes: a bare Fastify over `pg`, as the database's owner, with hand-written statements
// that are prepared once. Nobody signs in, nothing is asked of policies, nothing is logged. What it answers is what our
// route answers, made of the same columns.
import type { AddressInfo } from 'node:net';
import { createFloor } from './floor-routes.ts';

const url = process.env.FLOOR_DATABASE_URL;
if (!url) throw new Error('FLOOR_DATABASE_URL says which database.');
const app = createFloor(url);
await app.listen({ port: 0, host: '127.0.0.1' });
process.send?.((app.server.address() as AddressInfo).port);
process.on('disconnect', () => process.exit());
