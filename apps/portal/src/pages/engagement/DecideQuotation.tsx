import type { QuotationView } from '@garboard/contract/quotations';
import { writtenAmount } from '@garboard/trade/fees';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Checkbox, TextField } from '../../ui/Field.tsx';
import { Reason } from './Reason.tsx';

/** The client accepts by typing their name, or declines with a reason. */
export function DecideQuotation({ quotation }: { quotation: QuotationView }) {
  const [typedName, setTypedName] = useState('');
  const [read, setRead] = useState(false);
  const [tried, setTried] = useState(false);
  const [declining, setDeclining] = useState(false);
  const params = { id: quotation.id };
  const touches = ['getQuotation', 'listQuotations'] as const;
  const accept = useAction({
    run: (body: { typedName: string; textSha256: string }) => call('acceptQuotation', { params, body }),
    done: 'Accepted. A PDF of what you accepted is kept here for you and the firm.',
    touches,
  });
  const decline = useAction({
    run: (reason: string) => call('declineQuotation', { params, body: { reason } }),
    done: 'Declined. The firm is told.',
    touches,
    onDone: () => setDeclining(false),
  });
  return (
    <section className="stack measure section">
      <h2>Your decision</h2>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          setTried(true);
          if (!read || typedName.trim() === '') return;
          accept.run({ typedName, textSha256: quotation.textSha256 ?? '' });
        }}
      >
        <ErrorNotice error={accept.error} />
        <Checkbox
          label={`I have read what is surveyed, the fee of ${writtenAmount(quotation.total, quotation.currency)} and the terms above`}
          checked={read}
          onChange={setRead}
        />
        {tried && !read ? (
          <p className="field-error" role="alert">
            Tick that you have read it, once you have.
          </p>
        ) : null}
        <TextField
          label="Your name"
          hint="Typing it stands for your signature. The time, your network address and the text’s fingerprint are recorded with it."
          autoComplete="name"
          required
          maxLength={120}
          value={typedName}
          onChange={setTypedName}
          error={
            fieldError(accept.error, '/typedName') ??
            (tried && typedName.trim() === '' ? 'Type your own name.' : undefined)
          }
        />
        <div className="actions">
          <Button kind="main" type="submit" busy={accept.busy} busyLabel="Accepting…">
            Accept the fee and the terms
          </Button>
          <Button onClick={() => setDeclining(true)}>Decline…</Button>
        </div>
      </form>
      {declining ? (
        <Reason
          title="Decline the quotation"
          words="The firm is told your reason and may send you another one."
          confirm="Decline"
          busy={decline.busy}
          error={decline.error}
          onConfirm={decline.run}
          onClose={() => setDeclining(false)}
        />
      ) : null}
    </section>
  );
}
