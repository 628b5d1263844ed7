import { idParams, page, pageQuery } from '../common.ts';
import * as people from '../people.ts';
import { route } from './route.ts';

/** The firm and its staff. */
export const peopleRoutes = {
  getFirm: route({
    method: 'GET',
    path: '/v1/firms/{id}',
    tag: 'Firm',
    summary: 'A firm',
    access: 'signed-in',
    permission: 'firm.read',
    params: idParams,
    status: 200,
    response: people.firm,
    etag: true,
  }),
  updateFirm: route({
    method: 'PATCH',
    path: '/v1/firms/{id}',
    tag: 'Firm',
    summary: 'Change the firm’s particulars',
    access: 'signed-in',
    permission: 'firm.edit',
    params: idParams,
    body: people.firmPatch,
    status: 200,
    response: people.firm,
    etag: true,
  }),
  listMembers: route({
    method: 'GET',
    path: '/v1/firms/{id}/members',
    tag: 'Firm',
    summary: 'The firm’s staff',
    access: 'signed-in',
    permission: 'member.read',
    params: idParams,
    query: pageQuery,
    status: 200,
    response: page(people.member),
  }),
  addMember: route({
    method: 'POST',
    path: '/v1/firms/{id}/members',
    tag: 'Firm',
    summary: 'Invite a colleague',
    access: 'signed-in',
    permission: 'member.invite',
    params: idParams,
    body: people.memberCreate,
    status: 201,
    response: people.member,
    idempotent: true,
    problems: ['wrong-state'],
  }),
};
