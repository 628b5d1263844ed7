import type { QuotationView } from '@garboard/contract/quotations';
import type { Survey } from '@garboard/contract/surveys';
import { quotationStateLabels } from '@garboard/trade/engagement';
import { writtenAmount } from '@garboard/trade/fees';
import { surveyIsEditable } from '@garboard/trade/states';
import { Link } from 'wouter';
import { useList } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { formatDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Table } from '../../ui/Table.tsx';

/** Where a quotation stands, in words. */
export const standing = (q: Pick<QuotationView, 'state' | 'expired'>): string =>
  q.expired ? 'Not answered in time' : quotationStateLabels[q.state];

/** The quotations of a survey; the client's are those sent. */
export function Quotations({ survey }: { survey: Survey }) {
  const list = useList('listQuotations', { params: { id: survey.id } });
  const home = `/surveys/${survey.id}/quotations`;
  const writes = mayDo('quotation.write', survey);
  const waiting = list.items?.find((q) => q.state === 'sent' && !q.expired);
  return (
    <section className="stack">
      <h2>Fee and terms</h2>
      {waiting && mayDo('quotation.decide', survey) ? (
        <div className="stack measure">
          <p>
            {survey.firmName} offers the survey for {writtenAmount(waiting.total, waiting.currency)}. Read
            what is done for it and on what terms, then accept or decline, until{' '}
            {formatDay(waiting.validUntil)}.
          </p>
          <p>
            <ButtonLink kind="main" href={`${home}/${waiting.id}`}>
              Read the quotation and its terms
            </ButtonLink>
          </p>
        </div>
      ) : null}
      <MoreList
        list={list}
        what="the quotations"
        empty={
          <p className="measure">
            {writes
              ? 'No quotation yet. Draft one from your firm’s rates, and send it with your terms to whoever pays.'
              : 'The firm has sent no quotation yet.'}
          </p>
        }
      >
        {(items) => (
          <Table
            caption="Quotations, newest first"
            rows={items}
            rowKey={(q) => q.id}
            columns={[
              {
                key: 'revision',
                heading: 'Quotation',
                cell: (q) => <Link href={`${home}/${q.id}`}>Revision {q.revision}</Link>,
              },
              { key: 'to', heading: 'To', cell: (q) => q.addressee },
              {
                key: 'total',
                heading: 'Total',
                align: 'num',
                cell: (q) => writtenAmount(q.total, q.currency),
              },
              { key: 'state', heading: 'Now', cell: standing },
              { key: 'until', heading: 'Stands until', cell: (q) => formatDay(q.validUntil) },
            ]}
          />
        )}
      </MoreList>
      {writes && surveyIsEditable(survey.state) ? (
        <p>
          <ButtonLink href={`${home}/new`}>Draft a quotation</ButtonLink>
        </p>
      ) : null}
    </section>
  );
}
