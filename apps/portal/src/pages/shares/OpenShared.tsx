import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { isProblem } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { count, formatInstant } from '../../ui/format.ts';
import { Page } from '../../ui/Page.tsx';

/**
 * Where a share link leads: `/shared#token=…`. It is opened at a press, so that programs which look at links in mails
 * don't use its views up.
 */
export default function OpenShared() {
  const [token] = useState(() => new URLSearchParams(window.location.hash.slice(1)).get('token') ?? '');
  const info = useQuery({
    queryKey: ['lookUpShareLink', token],
    queryFn: () => call('lookUpShareLink', { body: { token } }),
    enabled: token.length >= 20,
  });
  const [passcode, setPasscode] = useState('');
  const [, go] = useLocation();
  const open = useAction({
    run: (body: CallArgs<'openSharedReport'>['body']) => call('openSharedReport', { body }),
    onDone: ({ id }) => go(`/shared/${id}`),
  });
  if (token.length < 20) {
    return (
      <Ended
        title="This link is not complete"
        words="Copy the whole link from the message that it came in."
      />
    );
  }
  if (isProblem(info.error, 'link-spent') || isProblem(open.error, 'link-spent')) {
    return (
      <Ended
        title="This link no longer works"
        words="It has run out, was used as often as allowed, or was ended. Ask whoever gave it to you for another."
      />
    );
  }
  if (info.error) return <ErrorNotice error={info.error} onRetry={() => void info.refetch()} />;
  if (!info.data) return <Loading what="the link" />;
  const { passcodeNeeded, viewsLeft, expiresAt } = info.data;
  return (
    <Page title="A survey report is shared with you">
      <form
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          open.run({ token, ...(passcodeNeeded ? { passcode } : {}) });
        }}
      >
        <ErrorNotice error={open.error} />
        <p>
          The link works until {formatInstant(expiresAt)}
          {viewsLeft === null ? '.' : ` and can be opened ${count(viewsLeft, 'more time', 'more times')}.`}{' '}
          You need no account. Whoever shared it sees when it is opened.
        </p>
        {passcodeNeeded ? (
          <TextField
            label="Passcode"
            hint="Whoever shared the report has it."
            required
            autoComplete="off"
            value={passcode}
            onChange={setPasscode}
          />
        ) : null}
        <div className="actions">
          <Button kind="main" type="submit" busy={open.busy} busyLabel="Opening…">
            Read the report
          </Button>
        </div>
      </form>
    </Page>
  );
}

function Ended({ title, words }: { title: string; words: string }) {
  return (
    <Page title={title}>
      <p className="measure">{words}</p>
    </Page>
  );
}
