import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import { buildOpenApi } from '@garboard/contract/openapi';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';

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
      // No address of this service is told to a validator elsewhere.
      uiConfig: { docExpansion: 'list', tryItOutEnabled: false, validatorUrl: null },
      theme: { title: 'Garboard: REST interface' },
    });
  });
}
