import { z } from 'zod';
import { idParams } from '../common.ts';
import * as signing from '../signing-key.ts';
import * as verification from '../verification.ts';
import { route } from './route.ts';

/** Telling a genuine document from another, its data for machines, and the key that signs it. */
export const verificationRoutes = {
  verifyCode: route({
    method: 'GET',
    path: '/v1/verifications/{code}',
    tag: 'Verification',
    summary: 'Whether a document with this verification code was issued here and still stands',
    access: 'public',
    params: verification.codeParams,
    status: 200,
    response: verification.verification,
    problems: ['too-many-requests'],
  }),
  verifyFile: route({
    method: 'POST',
    path: '/v1/verifications',
    tag: 'Verification',
    summary: 'Whether a file with this SHA-256 was issued here and still stands; the file is not sent',
    access: 'public',
    body: verification.verifyFile,
    status: 200,
    response: verification.verification,
    problems: ['too-many-requests'],
  }),
  getReportDataSchema: route({
    method: 'GET',
    path: '/v1/schemas/report-data.json',
    tag: 'Verification',
    summary: 'The JSON Schema of a report’s data, as attached to each PDF',
    access: 'public',
    status: 200,
    response: z.record(z.string(), z.unknown()),
  }),
  getReportCsv: route({
    method: 'GET',
    path: '/v1/reports/{id}/data.csv',
    tag: 'Reports',
    summary: 'The findings of an issued report as a table (CSV, UTF-8)',
    access: 'signed-in',
    params: idParams,
    status: 200,
    response: 'bytes',
    problems: ['wrong-state'],
  }),
  getSigningKey: route({
    method: 'GET',
    path: '/v1/firms/{id}/signing-key',
    tag: 'Firm',
    summary: 'The certificate that signs the firm’s documents',
    access: 'signed-in',
    params: idParams,
    status: 200,
    response: signing.signingKeyAnswer,
  }),
  putSigningKey: route({
    method: 'PUT',
    path: '/v1/firms/{id}/signing-key',
    tag: 'Firm',
    summary: 'Set or replace the key that signs the firm’s documents; for a principal',
    access: 'signed-in',
    params: idParams,
    body: signing.signingKeyUpload,
    status: 200,
    response: signing.signingKeyAnswer,
  }),
  deleteSigningKey: route({
    method: 'DELETE',
    path: '/v1/firms/{id}/signing-key',
    tag: 'Firm',
    summary: 'Remove the key; nothing can be issued until there is another; for a principal',
    access: 'signed-in',
    params: idParams,
    status: 204,
  }),
};
