import { createQuotation } from '@garboard/core/engagement/create-quotation';
import { acceptQuotation, declineQuotation } from '@garboard/core/engagement/decide-quotation';
import { getFirmRates } from '@garboard/core/engagement/get-firm-rates';
import { getQuotationPdf, getQuotationText } from '@garboard/core/engagement/get-quotation-file';
import { listFirmTerms } from '@garboard/core/engagement/list-firm-terms';
import { getQuotation, listQuotations } from '@garboard/core/engagement/list-quotations';
import { putFirmRates } from '@garboard/core/engagement/put-firm-rates';
import { saveFirmTerms } from '@garboard/core/engagement/save-firm-terms';
import { sendQuotation } from '@garboard/core/engagement/send-quotation';
import { updateQuotation } from '@garboard/core/engagement/update-quotation';
import { withdrawQuotation } from '@garboard/core/engagement/withdraw-quotation';
import { answerVisit } from '@garboard/core/visits/answer-visit';
import { getCalendarFeed, makeCalendarFeed, revokeCalendarFeed } from '@garboard/core/visits/calendar-feed';
import { createVisit } from '@garboard/core/visits/create-visit';
import { attendVisit, cancelVisit } from '@garboard/core/visits/end-visit';
import { listVisits } from '@garboard/core/visits/list-visits';
import { updateVisit } from '@garboard/core/visits/update-visit';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { serveBytes } from '../http/serve-bytes.ts';
import { serveCalendar } from '../http/serve-calendar.ts';
import { serveText } from '../http/serve-text.ts';

export function engagementRoutes(app: FastifyInstance, deps: Deps): void {
  const { publicUrl } = deps.env;
  serve(app, deps, 'getFirmRates', (ctx, { params }) => getFirmRates(ctx, params.id));
  serve(app, deps, 'putFirmRates', (ctx, { params, body, ifMatch }) =>
    putFirmRates(ctx, { firmId: params.id, rates: body, ifMatch }),
  );
  serve(app, deps, 'listFirmTerms', (ctx, { params, query }) =>
    listFirmTerms(ctx, { firmId: params.id, ...query }),
  );
  serve(app, deps, 'saveFirmTerms', (ctx, { params, body }) =>
    saveFirmTerms(ctx, { firmId: params.id, ...body }),
  );

  serve(app, deps, 'createQuotation', (ctx, { params, body }) =>
    createQuotation(ctx, { surveyId: params.id, quotation: body }),
  );
  serve(app, deps, 'listQuotations', (ctx, { params, query }) =>
    listQuotations(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'getQuotation', (ctx, { params }) => getQuotation(ctx, params.id));
  serve(app, deps, 'updateQuotation', (ctx, { params, body, ifMatch }) =>
    updateQuotation(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'sendQuotation', (ctx, { params, ifMatch }) =>
    sendQuotation(ctx, { id: params.id, ifMatch }),
  );
  serve(app, deps, 'acceptQuotation', (ctx, { params, body, request }) =>
    acceptQuotation(ctx, { id: params.id, ...body, from: request.ip }),
  );
  serve(app, deps, 'declineQuotation', (ctx, { params, body, request }) =>
    declineQuotation(ctx, { id: params.id, ...body, from: request.ip }),
  );
  serve(app, deps, 'withdrawQuotation', (ctx, { params, body }) =>
    withdrawQuotation(ctx, { id: params.id, ...body }),
  );
  serveText(app, deps, 'getQuotationText', async (ctx, params) => ({
    ...(await getQuotationText(ctx, params.id)),
    mediaType: 'text/plain; charset=utf-8',
  }));
  serveBytes(app, deps, 'getQuotationPdf', (ctx, { params }) => getQuotationPdf(ctx, params.id));

  serve(app, deps, 'createVisit', (ctx, { params, body }) =>
    createVisit(ctx, { surveyId: params.id, visit: body }),
  );
  serve(app, deps, 'listVisits', (ctx, { params, query }) =>
    listVisits(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'updateVisit', (ctx, { params, body, ifMatch }) =>
    updateVisit(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'cancelVisit', (ctx, { params, body }) => cancelVisit(ctx, { id: params.id, ...body }));
  serve(app, deps, 'attendVisit', (ctx, { params }) => attendVisit(ctx, params.id));
  serve(app, deps, 'answerVisit', (ctx, { params, body }) => answerVisit(ctx, { id: params.id, ...body }));
  serve(app, deps, 'getCalendarFeed', (ctx) => getCalendarFeed(ctx));
  serve(app, deps, 'makeCalendarFeed', (ctx) => makeCalendarFeed(ctx, { publicUrl }));
  serve(app, deps, 'revokeCalendarFeed', (ctx) => revokeCalendarFeed(ctx));
  serveCalendar(app, deps);
}
