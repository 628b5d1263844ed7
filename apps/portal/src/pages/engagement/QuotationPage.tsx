import { etagOf } from '@garboard/contract/client';
import type { QuotationView } from '@garboard/contract/quotations';
import type { Survey } from '@garboard/contract/surveys';
import { agreementOpening, agreementParts } from '@garboard/trade/engagement';
import { useState } from 'react';
import { call, pathOf } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { isStaffOf, mayDo } from '../../app/roles.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { formatDay, formatInstant } from '../../ui/format.ts';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { DecideQuotation } from './DecideQuotation.tsx';
import { LinesTable } from './LinesTable.tsx';
import { standing } from './Quotations.tsx';
import { Reason } from './Reason.tsx';

/** One quotation with its terms: to be sent by the firm, to be read and decided on by the client. */
export default function QuotationPage({ surveyId, id }: { surveyId: string; id: string }) {
  return <WithSurvey id={surveyId}>{(survey) => <Loaded survey={survey} id={id} />}</WithSurvey>;
}

function Loaded({ survey, id }: { survey: Survey; id: string }) {
  const quotation = useAnswer(
    'getQuotation',
    { params: { id } },
    // The PDF is there a moment after the acceptance.
    { again: (q) => (q?.state === 'accepted' && q.pdfSha256 === null ? 1_500 : false) },
  );
  if (isStatus(quotation.error, 404) || isStatus(quotation.error, 422)) return <NotFound />;
  if (quotation.error) {
    return <ErrorNotice error={quotation.error} onRetry={() => void quotation.refetch()} />;
  }
  if (!quotation.data) return <Loading what="the quotation" />;
  return <Read survey={survey} quotation={quotation.data} />;
}

function Read({ survey, quotation }: { survey: Survey; quotation: QuotationView }) {
  const { document } = quotation;
  const parts = document
    ? agreementParts(document)
    : [{ title: 'What is surveyed', paragraphs: quotation.scope.split(/\n{2,}/) }];
  return (
    <SurveyFrame survey={survey} title={`Quotation, revision ${quotation.revision}`}>
      <div className="stack-wide">
        <Where survey={survey} quotation={quotation} />
        <article className="stack">
          {document ? (
            <div className="stack measure">
              {agreementOpening(document).map((words) => (
                <p key={words}>{words}</p>
              ))}
            </div>
          ) : null}
          <LinesTable
            lines={quotation.lines}
            currency={quotation.currency}
            taxName={document?.taxName ?? ''}
            total={quotation.total}
          />
          {parts.map((part) => (
            <section key={part.title} className="stack measure">
              <h2>{part.title}</h2>
              {part.paragraphs.map((words) => (
                <p key={words} className="text" dir="auto">
                  {words}
                </p>
              ))}
            </section>
          ))}
        </article>
        {quotation.state === 'sent' && !quotation.expired && mayDo('quotation.decide', survey) ? (
          <DecideQuotation quotation={quotation} />
        ) : null}
      </div>
    </SurveyFrame>
  );
}

/** How far it has come, and what the firm can do with it. */
function Where({ survey, quotation }: { survey: Survey; quotation: QuotationView }) {
  const { state, id, decidedAt, decidedBy } = quotation;
  const when = decidedAt ? formatInstant(decidedAt, survey.timeZone) : '';
  return (
    <section className="stack">
      <Facts
        facts={[
          [
            'Now',
            state === 'sent' && !quotation.expired && mayDo('quotation.decide', survey)
              ? 'Waiting for your decision'
              : standing(quotation),
          ],
          ['To', quotation.addressee],
          ['Can be accepted until', formatDay(quotation.validUntil)],
          ...(state === 'accepted'
            ? ([
                ['Accepted by', `${decidedBy}, ${when}, from ${quotation.decidedFrom}`],
                ['SHA-256 of the text', <code key="hash">{quotation.textSha256}</code>],
              ] as const)
            : []),
          ...(state === 'declined' || state === 'withdrawn'
            ? ([['Why', [decidedBy, when, quotation.reason].filter(Boolean).join(', ')]] as const)
            : []),
        ]}
      />
      {quotation.document ? (
        <ul className="plain-list">
          {state === 'accepted' ? (
            <li>
              {quotation.pdfSha256 ? (
                <a href={pathOf('getQuotationPdf', { id })} download>
                  What was accepted (PDF)
                </a>
              ) : (
                <span role="status">The PDF of what was accepted is being made…</span>
              )}
            </li>
          ) : null}
          <li>
            <a href={pathOf('getQuotationText', { id })} download>
              The exact text (plain text)
            </a>
          </li>
        </ul>
      ) : null}
      {isStaffOf(survey) ? <Steps survey={survey} quotation={quotation} /> : null}
    </section>
  );
}

function Steps({ survey, quotation }: { survey: Survey; quotation: QuotationView }) {
  const [withdrawing, setWithdrawing] = useState(false);
  const params = { id: quotation.id };
  const touches = ['getQuotation', 'listQuotations', 'listEvents', 'listParties', 'getSurvey'] as const;
  const send = useAction({
    run: () => call('sendQuotation', { params, ifMatch: etagOf(quotation) }),
    done: `Sent to ${quotation.addressee}.`,
    touches,
  });
  const withdraw = useAction({
    run: (reason: string) => call('withdrawQuotation', { params, body: { reason } }),
    done: 'The quotation is withdrawn.',
    touches,
    onDone: () => setWithdrawing(false),
  });
  if (quotation.state !== 'draft' && quotation.state !== 'sent') return null;
  return (
    <>
      <ErrorNotice error={send.error} />
      <div className="actions">
        {quotation.state === 'draft' ? (
          <>
            <Button kind="main" busy={send.busy} busyLabel="Sending…" onClick={() => send.run(undefined)}>
              Send it with our terms
            </Button>
            <ButtonLink href={`/surveys/${survey.id}/quotations/${quotation.id}/edit`}>Change it</ButtonLink>
          </>
        ) : null}
        <Button onClick={() => setWithdrawing(true)}>
          {quotation.state === 'draft' ? 'Discard it' : 'Withdraw it'}
        </Button>
      </div>
      {withdrawing ? (
        <Reason
          title={quotation.state === 'draft' ? 'Discard the draft' : 'Withdraw the quotation'}
          words={
            quotation.state === 'draft'
              ? 'Nobody outside the firm has seen it.'
              : `${quotation.addressee} is told, and can’t accept it any more.`
          }
          confirm={quotation.state === 'draft' ? 'Discard' : 'Withdraw'}
          busy={withdraw.busy}
          error={withdraw.error}
          onConfirm={withdraw.run}
          onClose={() => setWithdrawing(false)}
        />
      ) : null}
    </>
  );
}
