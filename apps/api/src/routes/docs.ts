import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import { buildOpenApi } from '@garboard/contract/openapi';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';

/** The one style sheet that the reading page's script writes into it. A release that words it otherwise fails a test. */
const ownStyle = "'sha256-RL3ie0nH+Lzz2YNqQN83mnU0J1ot4QL7b99vMdIX99w='";

/** The interface's description and its reading page, from the schemas that validate it. */
export async function docsRoutes(app: FastifyInstance, deps: Deps): Promise<void> {
  const document = buildOpenApi(deps.env.publicUrl);
  app.get('/openapi.json', async (_request, reply) =>
    reply.header('cache-control', 'no-cache').send(document),
  );
  await app.register(async (scope) => {
    // The reading page is static; the document it shows is ours, not collected from routes.
    await scope.register(swagger, { mode: 'static', specification: { document: document as never } });
    await scope.register(swaggerUi, {
      routePrefix: '/docs',
      transformStaticCSP: (policy) => policy.replace("style-src 'self'", `style-src 'self' ${ownStyle}`),
      // No address of this service is told to a validator elsewhere.
      uiConfig: { docExpansion: 'list', tryItOutEnabled: false, validatorUrl: null },
      theme: { title: 'Garboard: REST interface' },
    });
  });
}
