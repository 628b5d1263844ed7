import { listEvents } from '@garboard/core/events/list-events';
import { addParty } from '@garboard/core/parties/add-party';
import { listDisclosures } from '@garboard/core/parties/list-disclosures';
import { listParties } from '@garboard/core/parties/list-parties';
import { nameFindings, nameYards } from '@garboard/core/parties/name-yards';
import { removeParty } from '@garboard/core/parties/remove-party';
import { updateParty } from '@garboard/core/parties/update-party';
import { createSurvey } from '@garboard/core/surveys/create-survey';
import { getSurvey } from '@garboard/core/surveys/get-survey';
import { listSurveys } from '@garboard/core/surveys/list-surveys';
import { updateSurvey } from '@garboard/core/surveys/update-survey';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';

export function surveyRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'createSurvey', (ctx, { body }) => createSurvey(ctx, body));
  serve(app, deps, 'listSurveys', (ctx, { query }) => listSurveys(ctx, query));
  serve(app, deps, 'getSurvey', (ctx, { params }) => getSurvey(ctx, params.id));
  serve(app, deps, 'updateSurvey', (ctx, { params, body, ifMatch }) =>
    updateSurvey(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'listEvents', (ctx, { params, query }) =>
    listEvents(ctx, { surveyId: params.id, ...query }),
  );

  serve(app, deps, 'addParty', (ctx, { params, body }) =>
    addParty(ctx, { surveyId: params.id, party: body }),
  );
  serve(app, deps, 'listParties', (ctx, { params, query }) =>
    listParties(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'updateParty', (ctx, { params, body }) =>
    updateParty(ctx, { surveyId: params.id, partyId: params.partyId, patch: body }),
  );
  serve(app, deps, 'removeParty', (ctx, { params }) =>
    removeParty(ctx, { surveyId: params.id, partyId: params.partyId }),
  );
  serve(app, deps, 'listDisclosures', (ctx, { params, query }) =>
    listDisclosures(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'putYardFindings', (ctx, { params, body }) =>
    nameFindings(ctx, { surveyId: params.id, partyId: params.partyId, ...body }),
  );
  serve(app, deps, 'putFindingYards', (ctx, { params, body }) =>
    nameYards(ctx, { findingId: params.id, ...body }),
  );
}
