import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { sendProblem } from '../http/problems.ts';

const notPages = /^\/(v1|health|docs|openapi\.json|assets)(\/|$|\?)/;

/** Serves the built portal; any address that isn't a file or the interface opens it, so that links can be shared. */
export async function portalRoutes(app: FastifyInstance, deps: Deps): Promise<void> {
  if (deps.portalDir) {
    await app.register(fastifyStatic, {
      root: deps.portalDir,
      // The build has written each text compressed beside it.
      preCompressed: true,
      setHeaders(response, path) {
        // Built file names carry a hash of their content.
        const lasting = /[\\/]assets[\\/]/.test(path);
        response.header('cache-control', lasting ? 'public, max-age=31536000, immutable' : 'no-cache');
      },
    });
  }
  // The reply isn't handed back: each promise that waits for one listens on the answer twice.
  app.setNotFoundHandler((request, reply) => {
    const wantsPage = request.method === 'GET' && !notPages.test(request.url) && deps.portalDir !== null;
    if (wantsPage) void reply.sendFile('index.html', { maxAge: 0, immutable: false });
    else
      sendProblem(
        request,
        reply,
        'not-found',
        'There is nothing at this address. The interface is described at /docs.',
      );
  });
}
