// Serves a folder as it is, texts compressed beforehand. Arguments: port, folder.
import fastifyStatic from '@fastify/static';
import Fastify from 'fastify';

const [port, folder = ''] = process.argv.slice(2);
const app = Fastify();
await app.register(fastifyStatic, { root: folder, preCompressed: true });
process.once('SIGTERM', () => void app.close().then(() => process.exit(0)));
await app.listen({ port: Number(port), host: '127.0.0.1' });
