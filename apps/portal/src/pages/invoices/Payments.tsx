import type { InvoiceView } from '@garboard/contract/invoices';
import { writtenAmount } from '@garboard/trade/fees';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { amountOf, minorOf } from '../../app/money.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { formatDay, today } from '../../ui/format.ts';
import { Table } from '../../ui/Table.tsx';

const touches = ['getInvoice', 'listInvoices', 'listAllInvoices', 'getRelease', 'getSurvey'] as const;

/** What has come in for an invoice, and the form for what comes in next. */
export function Payments({ invoice }: { invoice: InvoiceView }) {
  const [takingBack, setTakingBack] = useState<InvoiceView['payments'][number] | null>(null);
  const remove = useAction({
    run: (paymentId: string) => call('removePayment', { params: { id: invoice.id, paymentId } }),
    done: 'The payment is taken back.',
    touches,
    onDone: () => setTakingBack(null),
  });
  const open = invoice.state === 'sent' || invoice.state === 'part-paid';
  return (
    <section className="stack">
      <h2>Payments</h2>
      {invoice.payments.length ? (
        <Table
          caption="In the order they were recorded"
          rows={invoice.payments}
          rowKey={(payment) => payment.id}
          columns={[
            { key: 'on', heading: 'Came in', cell: (p) => formatDay(p.paidOn) },
            {
              key: 'amount',
              heading: 'Amount',
              align: 'num',
              cell: (p) => writtenAmount(p.amount, invoice.currency),
            },
            { key: 'note', heading: 'Note', cell: (p) => p.note },
            { key: 'by', heading: 'Recorded by', cell: (p) => p.recordedBy },
            {
              key: 'back',
              heading: 'Do',
              cell: (p) => (
                <Button
                  kind="quiet"
                  aria-label={`Take back the payment of ${writtenAmount(p.amount, invoice.currency)}`}
                  onClick={() => setTakingBack(p)}
                >
                  Take back
                </Button>
              ),
            },
          ]}
        />
      ) : (
        <p>Nothing has come in yet.</p>
      )}
      {open ? <Record key={invoice.paid} invoice={invoice} /> : null}
      {takingBack ? (
        <ConfirmDialog
          title="Take the payment back"
          confirmLabel="Take it back"
          busy={remove.busy}
          onConfirm={() => remove.run(takingBack.id)}
          onClose={() => setTakingBack(null)}
        >
          <p>
            For one recorded by mistake. A report that was handed over because it was paid for is withheld
            again.
          </p>
          <ErrorNotice error={remove.error} />
        </ConfirmDialog>
      ) : null}
    </section>
  );
}

function Record({ invoice }: { invoice: InvoiceView }) {
  const [amount, setAmount] = useState(amountOf(invoice.total - invoice.paid, invoice.currency));
  const [paidOn, setPaidOn] = useState(today());
  const [note, setNote] = useState('');
  const [tried, setTried] = useState(false);
  const minor = minorOf(amount, invoice.currency);
  const record = useAction({
    run: (body: { amount: number; paidOn: string; note: string }, key) =>
      call('recordPayment', { params: { id: invoice.id }, body, idempotencyKey: key }),
    done: 'The payment is recorded.',
    touches,
  });
  return (
    <form
      className="stack measure"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (minor) record.run({ amount: minor, paidOn, note });
      }}
    >
      <h3>Record what came in</h3>
      <ErrorNotice error={record.error} />
      <div className="fields-2">
        <TextField
          label={`Amount, ${invoice.currency}`}
          inputMode="decimal"
          value={amount}
          onChange={setAmount}
          error={
            fieldError(record.error, '/amount') ??
            (tried && !minor ? 'Write the amount in figures.' : undefined)
          }
        />
        <TextField
          label="Came in on"
          type="date"
          required
          value={paidOn}
          onChange={setPaidOn}
          error={fieldError(record.error, '/paidOn')}
        />
      </div>
      <TextField
        label="Note"
        optional
        hint="Such as the bank’s reference. Never write card numbers here."
        maxLength={200}
        value={note}
        onChange={setNote}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={record.busy} busyLabel="Recording…">
          Record the payment
        </Button>
      </div>
    </form>
  );
}
