import type { InvoiceView } from '@garboard/contract/invoices';
import { invoiceStateLabels } from '@garboard/trade/engagement';
import { writtenAmount } from '@garboard/trade/fees';
import { Link } from 'wouter';
import { formatDay } from '../../ui/format.ts';
import { Table } from '../../ui/Table.tsx';

/** Where an invoice stands, in words. */
export const invoiceStanding = (invoice: Pick<InvoiceView, 'state' | 'overdue'>): string =>
  invoice.overdue ? `${invoiceStateLabels[invoice.state]}, overdue` : invoiceStateLabels[invoice.state];

/** Invoices in a table. @param withSurvey whether to say of which survey each is */
export function InvoiceTable({
  caption,
  invoices,
  withSurvey = false,
}: {
  caption: string;
  invoices: readonly InvoiceView[];
  withSurvey?: boolean;
}) {
  return (
    <Table
      caption={caption}
      rows={invoices}
      rowKey={(i) => i.id}
      columns={[
        {
          key: 'number',
          heading: 'Invoice',
          cell: (i) => <Link href={`/invoices/${i.id}`}>{i.number ?? 'Draft, no number yet'}</Link>,
        },
        ...(withSurvey
          ? [
              {
                key: 'survey',
                heading: 'Survey',
                cell: (i: InvoiceView) => (
                  <Link href={`/surveys/${i.surveyId}/engagement`}>
                    {i.vesselName}, {i.surveyNumber}
                  </Link>
                ),
              },
            ]
          : []),
        { key: 'to', heading: 'To', cell: (i) => i.billTo.split('\n')[0] },
        { key: 'total', heading: 'Total', align: 'num', cell: (i) => writtenAmount(i.total, i.currency) },
        {
          key: 'open',
          heading: 'Still open',
          align: 'num',
          cell: (i) => (i.state === 'void' ? '' : writtenAmount(i.total - i.paid, i.currency)),
        },
        { key: 'state', heading: 'Now', cell: invoiceStanding },
        { key: 'due', heading: 'Due', cell: (i) => i.dueOn && formatDay(i.dueOn) },
      ]}
    />
  );
}
