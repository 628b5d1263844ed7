import * as catalogue from '../catalogue.ts';
import { page } from '../common.ts';
import { route } from './route.ts';

/** Known defects: ours, and each firm's own entries and words over ours. */
export const catalogueRoutes = {
  listCatalogue: route({
    method: 'GET',
    path: '/v1/catalogue',
    tag: 'Catalogue',
    summary: 'Known defects: best match first, or by system when no words are given',
    access: 'signed-in',
    query: catalogue.catalogueQuery,
    status: 200,
    response: catalogue.cataloguePage,
  }),
  getCatalogueEntry: route({
    method: 'GET',
    path: '/v1/catalogue/{key}',
    tag: 'Catalogue',
    summary: 'A known defect, in the firm’s words where it has its own',
    access: 'signed-in',
    params: catalogue.catalogueParams,
    query: catalogue.catalogueFirmQuery,
    status: 200,
    response: catalogue.catalogueEntry,
    etag: true,
  }),
  putCatalogueEntry: route({
    method: 'PUT',
    path: '/v1/catalogue/{key}',
    tag: 'Catalogue',
    summary: 'Save an entry of the firm’s own, or its words over ours, as a new version',
    access: 'signed-in',
    params: catalogue.catalogueParams,
    query: catalogue.catalogueFirmQuery,
    body: catalogue.catalogueWording,
    status: 200,
    response: catalogue.catalogueEntry,
    etag: true,
  }),
  deleteCatalogueEntry: route({
    method: 'DELETE',
    path: '/v1/catalogue/{key}',
    tag: 'Catalogue',
    summary: 'Go back to our words, or retire an entry of the firm’s own',
    access: 'signed-in',
    params: catalogue.catalogueParams,
    query: catalogue.catalogueFirmQuery,
    status: 204,
    problems: ['stale-version', 'wrong-state'],
  }),
  listCatalogueVersions: route({
    method: 'GET',
    path: '/v1/catalogue/{key}/versions',
    tag: 'Catalogue',
    summary: 'Every wording the firm has saved, and ours, newest first',
    access: 'signed-in',
    params: catalogue.catalogueParams,
    query: catalogue.catalogueVersionQuery,
    status: 200,
    response: page(catalogue.catalogueVersion),
  }),
};
