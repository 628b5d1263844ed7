import type { Survey } from '@garboard/contract/surveys';
import { useLocation } from 'wouter';
import { call } from '../../api/client.ts';
import { useAction, useList } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { MoreList } from '../../ui/MoreList.tsx';
import { InvoiceTable } from '../invoices/InvoiceTable.tsx';

/** The invoices of a survey; the client's are those sent. */
export function SurveyInvoices({ survey }: { survey: Survey }) {
  const [, go] = useLocation();
  const list = useList('listInvoices', { params: { id: survey.id } });
  const quotations = useList('listQuotations', { params: { id: survey.id } });
  const writes = mayDo('invoice.write', survey);
  const accepted = quotations.items?.find((q) => q.state === 'accepted');
  const invoiced = list.items?.some((i) => i.quotationId === accepted?.id && i.state !== 'void');
  const draft = useAction({
    run: (quotationId: string, key) =>
      call('createInvoice', { params: { id: survey.id }, body: { quotationId }, idempotencyKey: key }),
    done: 'Drafted from what was accepted. Look it over, then send it.',
    touches: ['listInvoices', 'listAllInvoices'],
    onDone: (invoice) => go(`/invoices/${invoice.id}`),
  });
  return (
    <section className="stack">
      <h2>Invoices</h2>
      <MoreList
        list={list}
        what="the invoices"
        empty={<p>{writes ? 'No invoice yet.' : 'The firm has sent no invoice yet.'}</p>}
      >
        {(items) => <InvoiceTable caption="Newest first" invoices={items} />}
      </MoreList>
      {writes ? (
        <>
          <ErrorNotice error={draft.error} />
          <div className="actions">
            {accepted && !invoiced ? (
              <Button busy={draft.busy} onClick={() => draft.run(accepted.id)}>
                Invoice what was accepted
              </Button>
            ) : null}
            <ButtonLink href={`/surveys/${survey.id}/invoices/new`}>Draft another invoice</ButtonLink>
          </div>
        </>
      ) : null}
    </section>
  );
}
