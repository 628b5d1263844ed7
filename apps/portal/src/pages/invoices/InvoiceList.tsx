import { invoiceStateLabels } from '@garboard/trade/engagement';
import { useState } from 'react';
import { useList } from '../../api/queries.ts';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { InvoiceTable } from './InvoiceTable.tsx';

const states = { unpaid: 'Not paid yet', overdue: 'Overdue', ...invoiceStateLabels };

/** The firm's invoices, and the way to take them into its books. */
export default function InvoiceList() {
  const [state, setState] = useState<keyof typeof states | ''>('');
  const [q, setQ] = useState('');
  const query = { ...(state ? { state } : {}), ...(q.trim() ? { q: q.trim() } : {}) };
  const list = useList('listAllInvoices', { query });
  const csv = `/v1/invoices.csv?${new URLSearchParams(query)}`;
  return (
    <Page title="Invoices" under="What was asked for surveys, and what has come in. Not a ledger.">
      <div className="stack">
        <search className="filters">
          <SelectField label="Which" value={state} options={states} empty="All" onChange={setState} />
          <TextField
            className="grow"
            label="Number, vessel or addressee"
            type="search"
            value={q}
            onChange={setQ}
          />
          <a className="button button-plain" href={csv} download>
            Take these as CSV
          </a>
        </search>
        <MoreList
          list={list}
          what="the invoices"
          empty={
            <p className="measure">
              {state || q
                ? 'No invoice is like this.'
                : 'No invoice yet. Invoices are drafted on the engagement page of a survey.'}
            </p>
          }
        >
          {(items) => <InvoiceTable caption="Newest first" invoices={items} withSurvey />}
        </MoreList>
      </div>
    </Page>
  );
}
