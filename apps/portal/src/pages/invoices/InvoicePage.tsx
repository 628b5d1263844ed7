import { etagOf } from '@garboard/contract/client';
import type { InvoiceView } from '@garboard/contract/invoices';
import { writtenAmount } from '@garboard/trade/fees';
import { useState } from 'react';
import { Link } from 'wouter';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { useMe } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { formatDay } from '../../ui/format.ts';
import { Page } from '../../ui/Page.tsx';
import { LinesTable } from '../engagement/LinesTable.tsx';
import { Reason } from '../engagement/Reason.tsx';
import InvoiceEditor from './InvoiceEditor.tsx';
import { invoiceStanding } from './InvoiceTable.tsx';
import { Payments } from './Payments.tsx';

/** One invoice: what is asked, by when, and what has come in. */
export default function InvoicePage({ id }: { id: string }) {
  const invoice = useAnswer('getInvoice', { params: { id } });
  const [editing, setEditing] = useState<InvoiceView | null>(null);
  const staff = useMe().firmRoles.length > 0;
  if (isStatus(invoice.error, 404) || isStatus(invoice.error, 422)) return <NotFound />;
  if (invoice.error) return <ErrorNotice error={invoice.error} onRetry={() => void invoice.refetch()} />;
  if (!invoice.data) return <Loading what="the invoice" />;
  const { data } = invoice;
  // Once it is saved there is a newer version, and it is read again.
  if (editing && editing.version === data.version) {
    return <InvoiceEditor surveyId={data.surveyId} invoice={editing} />;
  }
  return (
    <Page
      title={data.number ? `Invoice ${data.number}` : 'Draft invoice'}
      over={
        <Link href={`/surveys/${data.surveyId}/engagement`}>
          {data.vesselName}, {data.surveyNumber}
        </Link>
      }
      under={invoiceStanding(data)}
    >
      <div className="stack-wide">
        <Facts
          facts={[
            [
              'Made out to',
              <span key="to" className="text">
                {data.billTo}
              </span>,
            ],
            ['Issued', data.issuedOn ? formatDay(data.issuedOn) : 'Not sent yet'],
            ...(data.dueOn ? ([['Due', formatDay(data.dueOn)]] as const) : []),
            ['Paid', writtenAmount(data.paid, data.currency)],
            ...(data.state === 'void'
              ? ([['Void', data.reason]] as const)
              : ([['Still open', writtenAmount(data.total - data.paid, data.currency)]] as const)),
            ...(data.paymentWords ? ([['How to pay', data.paymentWords]] as const) : []),
          ]}
        />
        {staff ? <Steps invoice={data} onEdit={() => setEditing(data)} /> : null}
        <LinesTable lines={data.lines} currency={data.currency} taxName={data.taxName} total={data.total} />
        {staff && data.state !== 'draft' ? <Payments invoice={data} /> : null}
      </div>
    </Page>
  );
}

function Steps({ invoice, onEdit }: { invoice: InvoiceView; onEdit: () => void }) {
  const [voiding, setVoiding] = useState(false);
  const params = { id: invoice.id };
  const touches = ['getInvoice', 'listInvoices', 'listAllInvoices', 'getRelease', 'getSurvey'] as const;
  const send = useAction({
    run: () => call('sendInvoice', { params, ifMatch: etagOf(invoice) }),
    done: (sent) => `Invoice ${sent.number} is sent; the client is told.`,
    touches,
  });
  const discard = useAction({
    run: (reason: string) => call('voidInvoice', { params, body: { reason } }),
    done:
      invoice.state === 'draft' ? 'The draft is discarded.' : 'The invoice is void. Its number stays used.',
    touches,
    onDone: () => setVoiding(false),
  });
  if (invoice.state === 'void' || invoice.paid > 0) return null;
  const draft = invoice.state === 'draft';
  return (
    <section className="stack">
      <ErrorNotice error={send.error} />
      <div className="actions">
        {draft ? (
          <>
            <Button kind="main" busy={send.busy} busyLabel="Sending…" onClick={() => send.run(undefined)}>
              Give it a number and send it
            </Button>
            <Button onClick={onEdit}>Change it</Button>
          </>
        ) : null}
        <Button onClick={() => setVoiding(true)}>{draft ? 'Discard it' : 'Make it void'}</Button>
      </div>
      {voiding ? (
        <Reason
          title={draft ? 'Discard the draft' : 'Make the invoice void'}
          words={
            draft
              ? 'It has no number yet, so nothing is missing afterwards.'
              : 'Its number stays used, so that your row of numbers has no gap.'
          }
          confirm={draft ? 'Discard' : 'Make it void'}
          busy={discard.busy}
          error={discard.error}
          onConfirm={discard.run}
          onClose={() => setVoiding(false)}
        />
      ) : null}
    </section>
  );
}
