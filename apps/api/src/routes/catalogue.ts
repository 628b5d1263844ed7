import { deleteCatalogueEntry } from '@garboard/core/catalogue/delete-entry';
import { getCatalogueEntry } from '@garboard/core/catalogue/get-entry';
import { listCatalogue } from '@garboard/core/catalogue/list-catalogue';
import { listCatalogueVersions } from '@garboard/core/catalogue/list-versions';
import { putCatalogueEntry } from '@garboard/core/catalogue/put-entry';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve, serveReading } from '../http/serve.ts';

export function catalogueRoutes(app: FastifyInstance, deps: Deps): void {
  serveReading(app, deps, 'listCatalogue', (ctx, { query }) => listCatalogue(ctx, query));
  serve(app, deps, 'getCatalogueEntry', (ctx, { params, query }) =>
    getCatalogueEntry(ctx, { ...params, ...query }),
  );
  serve(app, deps, 'putCatalogueEntry', (ctx, { params, query, body, ifMatch }) =>
    putCatalogueEntry(ctx, { ...params, ...query, wording: body, ifMatch }),
  );
  serve(app, deps, 'deleteCatalogueEntry', (ctx, { params, query, ifMatch }) =>
    deleteCatalogueEntry(ctx, { ...params, ...query, ifMatch }),
  );
  serve(app, deps, 'listCatalogueVersions', (ctx, { params, query }) =>
    listCatalogueVersions(ctx, { ...params, ...query }),
  );
}
