import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { Answer, CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { meKey } from '../../app/session.tsx';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { Page } from '../../ui/Page.tsx';

/** Where a one-time link leads: `/welcome#token=…`. The token stays out of requests for pages and their logs. */
export default function Welcome() {
  const [token] = useState(() => new URLSearchParams(window.location.hash.slice(1)).get('token') ?? '');
  const info = useQuery({
    queryKey: ['lookUpWelcome', token],
    queryFn: () => call('lookUpWelcome', { body: { token } }),
    enabled: token.length >= 20,
    staleTime: Number.POSITIVE_INFINITY,
  });
  if (token.length < 20) return <Incomplete />;
  if (info.error) {
    return (
      <Page title="Welcome to Garboard">
        <div className="stack">
          <ErrorNotice error={info.error} />
          <ButtonLink href="/">Go to sign in</ButtonLink>
        </div>
      </Page>
    );
  }
  if (!info.data) return <Loading what="your invitation" />;
  return <Choose token={token} info={info.data} />;
}

function Incomplete() {
  return (
    <Page title="This link is not complete">
      <div className="stack measure">
        <p>Copy the whole link from your invitation into the address bar, or ask for a new invitation.</p>
        <ButtonLink href="/">Go to sign in</ButtonLink>
      </div>
    </Page>
  );
}

function Choose({ token, info }: { token: string; info: Answer<'lookUpWelcome'> }) {
  const first = info.kind === 'first-account';
  const queryClient = useQueryClient();
  const [, go] = useLocation();
  const [name, setName] = useState(info.name ?? '');
  const [email, setEmail] = useState(info.email ?? '');
  const [firmName, setFirmName] = useState('');
  const [password, setPassword] = useState('');
  const [again, setAgain] = useState('');
  const [differs, setDiffers] = useState(false);
  const choose = useAction({
    run: (body: CallArgs<'useWelcome'>['body']) => call('useWelcome', { body }),
    done: ({ person }) => `Welcome, ${person.name}. You are signed in.`,
    onDone: () => {
      void queryClient.invalidateQueries({ queryKey: meKey });
      go('/surveys', { replace: true });
    },
  });
  return (
    <Page
      title={first ? 'Set up your firm' : 'Choose a password'}
      under={first ? 'The first account is the principal’s.' : info.email}
    >
      <form
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          setDiffers(password !== again);
          if (password !== again) return;
          choose.run({
            token,
            password,
            ...(first || name ? { name } : {}),
            ...(first ? { email, firmName } : {}),
          });
        }}
      >
        <ErrorNotice error={choose.error} />
        {first ? (
          <>
            <TextField
              label="Name of the firm"
              required
              maxLength={160}
              value={firmName}
              onChange={setFirmName}
              autoComplete="organization"
              error={fieldError(choose.error, '/firmName')}
            />
            <TextField
              label="Your e-mail"
              type="email"
              required
              value={email}
              onChange={setEmail}
              autoComplete="username"
              error={fieldError(choose.error, '/email')}
            />
          </>
        ) : null}
        <TextField
          label="Your name"
          required
          maxLength={120}
          value={name}
          onChange={setName}
          autoComplete="name"
          hint="As it should stand in reports and histories."
          error={fieldError(choose.error, '/name')}
        />
        <TextField
          label="Password"
          type="password"
          hint="12 characters or more. A few words that belong together only for you do well."
          required
          minLength={12}
          maxLength={200}
          value={password}
          onChange={setPassword}
          autoComplete="new-password"
          error={fieldError(choose.error, '/password')}
        />
        <TextField
          label="The same password again"
          type="password"
          required
          value={again}
          onChange={setAgain}
          autoComplete="new-password"
          error={differs && password !== again ? 'The two passwords differ.' : undefined}
        />
        <div className="actions">
          <Button kind="main" type="submit" busy={choose.busy} busyLabel="Saving…">
            {first ? 'Create the account' : 'Save and sign in'}
          </Button>
        </div>
      </form>
    </Page>
  );
}
