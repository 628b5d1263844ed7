import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { formatInstant } from '../../ui/format.ts';

/** The person's visits as a calendar that other programs read by a secret address. */
export function Calendar() {
  const feed = useAnswer('getCalendarFeed', {});
  /** Told once, when it is made. */
  const [address, setAddress] = useState<string | null>(null);
  const [asking, setAsking] = useState<'new' | 'stop' | null>(null);
  const make = useAction({
    run: () => call('makeCalendarFeed', {}),
    done: 'Your calendar has an address. Copy it now: it is shown this once.',
    touches: ['getCalendarFeed'],
    onDone: (made) => {
      setAddress(made.address);
      setAsking(null);
    },
  });
  const stop = useAction({
    run: () => call('revokeCalendarFeed', {}),
    done: 'The address no longer works.',
    touches: ['getCalendarFeed'],
    onDone: () => {
      setAddress(null);
      setAsking(null);
    },
  });
  const there = feed.data?.createdAt;
  return (
    <section className="stack measure">
      <h2>Your visits in your own calendar</h2>
      <p>
        A calendar program reads your visits by a secret address and keeps itself up to date. Whoever has the
        address can read them too, so give it to nobody.
      </p>
      <ErrorNotice error={make.error ?? stop.error} />
      {feed.error ? <ErrorNotice quiet error={feed.error} onRetry={() => void feed.refetch()} /> : null}
      {feed.data || feed.error ? null : <Loading what="your calendar" />}
      {address ? (
        <TextField
          label="Address of your calendar"
          hint="Subscribe to it in your calendar program. It is shown this once; you can make another at any time."
          readOnly
          value={address}
          onChange={() => undefined}
          onFocus={(event) => event.currentTarget.select()}
        />
      ) : null}
      {there ? (
        <p className="soft">
          Address made {formatInstant(there)};{' '}
          {feed.data?.lastReadAt ? `last read ${formatInstant(feed.data.lastReadAt)}.` : 'not read yet.'}
        </p>
      ) : null}
      {feed.data ? (
        <div className="actions">
          <Button busy={make.busy} onClick={() => (there ? setAsking('new') : make.run(undefined))}>
            {there ? 'Make a new address' : 'Make an address'}
          </Button>
          {there ? <Button onClick={() => setAsking('stop')}>Stop the address</Button> : null}
        </div>
      ) : null}
      {asking ? (
        <ConfirmDialog
          title={asking === 'new' ? 'Make a new address' : 'Stop the address'}
          confirmLabel={asking === 'new' ? 'Make a new one' : 'Stop it'}
          busy={make.busy || stop.busy}
          onConfirm={() => (asking === 'new' ? make.run(undefined) : stop.run(undefined))}
          onClose={() => setAsking(null)}
        >
          <p>Calendars that read the address you have now get nothing any more.</p>
        </ConfirmDialog>
      ) : null}
    </section>
  );
}
