import * as ownData from '../own-data.ts';
import { route } from './route.ts';

const own = { access: 'signed-in', permission: 'own-account', tag: 'Own data' } as const;

/** What is kept of a person, for that person. */
export const ownDataRoutes = {
  exportOwnData: route({
    ...own,
    method: 'GET',
    path: '/v1/me/export',
    summary: 'Everything that is kept of me',
    status: 200,
    response: ownData.personExport,
  }),
  eraseMe: route({
    ...own,
    method: 'POST',
    path: '/v1/me/erasure',
    summary: 'End my account and take my name out of what is kept',
    body: ownData.erasure,
    status: 204,
    problems: ['proof-needed', 'wrong-state', 'too-many-requests'],
  }),
};
