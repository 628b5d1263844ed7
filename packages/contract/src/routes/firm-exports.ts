import { z } from 'zod';
import { firmExport } from '../archive.ts';
import { idParams, page, pageQuery } from '../common.ts';
import { route } from './route.ts';

/** Everything of a firm as one archive, which another installation can bring in. */
export const firmExportRoutes = {
  createFirmExport: route({
    method: 'POST',
    path: '/v1/firms/{id}/exports',
    tag: 'Firm',
    summary: 'Make an archive of everything the firm has; it replaces the one made before',
    access: 'signed-in',
    permission: 'firm.export',
    params: idParams,
    status: 202,
    response: firmExport,
    idempotent: true,
    problems: ['wrong-state'],
  }),
  listFirmExports: route({
    method: 'GET',
    path: '/v1/firms/{id}/exports',
    tag: 'Firm',
    summary: 'The archives that were asked for, newest first',
    access: 'signed-in',
    permission: 'firm.export',
    params: idParams,
    query: pageQuery,
    status: 200,
    response: page(firmExport),
  }),
  getFirmExportFile: route({
    method: 'GET',
    path: '/v1/firm-exports/{id}/archive',
    tag: 'Firm',
    summary: 'The archive (ZIP)',
    access: 'signed-in',
    permission: 'firm.export',
    params: idParams,
    status: 200,
    response: 'bytes',
    problems: ['wrong-state'],
  }),
  getFirmArchiveSchema: route({
    method: 'GET',
    path: '/v1/schemas/firm-archive.json',
    tag: 'Firm',
    summary: 'The JSON Schema of an archive’s entries',
    access: 'public',
    permission: 'public',
    status: 200,
    response: z.record(z.string(), z.unknown()),
  }),
};
