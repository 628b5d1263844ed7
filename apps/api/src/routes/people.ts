import { addMember } from '@garboard/core/firms/add-member';
import { listMembers } from '@garboard/core/firms/list-members';
import { getFirm, updateFirm } from '@garboard/core/firms/update-firm';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';

export function peopleRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'getFirm', (ctx, { params }) => getFirm(ctx, params.id));
  serve(app, deps, 'updateFirm', (ctx, { params, body, ifMatch }) =>
    updateFirm(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'listMembers', (ctx, { params, query }) =>
    listMembers(ctx, { firmId: params.id, ...query }),
  );
  serve(app, deps, 'addMember', (ctx, { params, body }) =>
    addMember(ctx, { firmId: params.id, member: body }),
  );
}
