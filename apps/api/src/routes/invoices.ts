import type { InvoiceView } from '@garboard/contract/invoices';
import { getRelease } from '@garboard/core/engagement/get-release';
import { giveRelease } from '@garboard/core/engagement/give-release';
import { createInvoice } from '@garboard/core/invoices/create-invoice';
import { getInvoice, listAllInvoices, listInvoices } from '@garboard/core/invoices/list-invoices';
import { recordPayment, removePayment } from '@garboard/core/invoices/record-payment';
import { sendInvoice } from '@garboard/core/invoices/send-invoice';
import { updateInvoice } from '@garboard/core/invoices/update-invoice';
import { voidInvoice } from '@garboard/core/invoices/void-invoice';
import { decimalsOf } from '@garboard/trade/costs';
import { invoiceStateLabels } from '@garboard/trade/engagement';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { type CsvList, serveCsv } from '../http/serve-csv.ts';

/** In the currency’s usual unit, with its decimals and a point, as programs of bookkeeping read them. */
const amount = (minor: number, currency: string): string => {
  const decimals = decimalsOf(currency);
  return (minor / 10 ** decimals).toFixed(decimals);
};

const columns: CsvList<never, InvoiceView>['columns'] = {
  number: (i) => i.number,
  state: (i) => invoiceStateLabels[i.state],
  issued_on: (i) => i.issuedOn,
  due_on: (i) => i.dueOn,
  survey: (i) => i.surveyNumber,
  vessel: (i) => i.vesselName,
  bill_to: (i) => i.billTo,
  currency: (i) => i.currency,
  net: (i) => amount(i.net, i.currency),
  tax_name: (i) => i.taxName,
  tax: (i) => amount(i.tax, i.currency),
  total: (i) => amount(i.total, i.currency),
  paid: (i) => amount(i.paid, i.currency),
  open: (i) => amount(i.state === 'void' ? 0 : i.total - i.paid, i.currency),
  last_paid_on: (i) =>
    i.payments
      .map((p) => p.paidOn)
      .sort()
      .at(-1) ?? null,
  reason_void: (i) => i.reason,
};

export function invoiceRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'createInvoice', (ctx, { params, body }) =>
    createInvoice(ctx, { surveyId: params.id, invoice: body }),
  );
  serve(app, deps, 'listInvoices', (ctx, { params, query }) =>
    listInvoices(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'listAllInvoices', (ctx, { query }) => listAllInvoices(ctx, query));
  serveCsv(app, deps, 'exportInvoices', {
    name: 'invoices',
    columns,
    page: (ctx, query, cursor) => listAllInvoices(ctx, { ...query, cursor, limit: 200 }),
  });
  serve(app, deps, 'getInvoice', (ctx, { params }) => getInvoice(ctx, params.id));
  serve(app, deps, 'updateInvoice', (ctx, { params, body, ifMatch }) =>
    updateInvoice(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'sendInvoice', (ctx, { params, ifMatch }) => sendInvoice(ctx, { id: params.id, ifMatch }));
  serve(app, deps, 'voidInvoice', (ctx, { params, body }) => voidInvoice(ctx, { id: params.id, ...body }));
  serve(app, deps, 'recordPayment', (ctx, { params, body }) =>
    recordPayment(ctx, { id: params.id, payment: body }),
  );
  serve(app, deps, 'removePayment', (ctx, { params }) => removePayment(ctx, params));
  serve(app, deps, 'getRelease', (ctx, { params }) => getRelease(ctx, params.id));
  serve(app, deps, 'giveRelease', (ctx, { params, body }) =>
    giveRelease(ctx, { surveyId: params.id, ...body }),
  );
}
