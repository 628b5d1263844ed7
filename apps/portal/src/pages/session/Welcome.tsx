import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { isProblem } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { meKey } from '../../app/session.tsx';
import { ButtonLink } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Page } from '../../ui/Page.tsx';
import { CodeForm } from './CodeForm.tsx';
import { FirstAccount } from './FirstAccount.tsx';
import { SpentLink } from './SpentLink.tsx';
import { Arrive, Invited } from './WelcomeForms.tsx';

/** Where a one-time link leads: `/welcome#token=…`. The token stays out of requests for pages and their logs. */
export default function Welcome() {
  const [token] = useState(() => new URLSearchParams(window.location.hash.slice(1)).get('token') ?? '');
  const info = useQuery({
    queryKey: ['lookUpWelcome', token],
    queryFn: () => call('lookUpWelcome', { body: { token } }),
    enabled: token.length >= 20,
    staleTime: Number.POSITIVE_INFINITY,
  });
  const use = useUse();
  if (token.length < 20) return <SpentLink incomplete />;
  if (isProblem(info.error, 'link-spent') || isProblem(use.error, 'link-spent')) return <SpentLink />;
  if (info.error) {
    return (
      <Page title="Welcome to Garboard">
        <div className="stack">
          <ErrorNotice error={info.error} onRetry={() => void info.refetch()} />
          <ButtonLink href="/">Go to sign in</ButtonLink>
        </div>
      </Page>
    );
  }
  if (!info.data) return <Loading what="your link" />;
  const { kind, email, name, codeNeeded } = info.data;
  const run = (fields: Omit<CallArgs<'useWelcome'>['body'], 'token'>) => use.run({ token, ...fields });
  if (kind === 'first-account') return <FirstAccount use={{ ...use, run }} />;
  if (codeNeeded) {
    return (
      <Page title="Your code" under={email}>
        <CodeForm error={use.error} busy={use.busy} onCode={(code) => run({ code })} />
      </Page>
    );
  }
  const as = { name: name ?? '', email: email ?? '' };
  return kind === 'invitation' ? (
    <Invited {...as} use={{ ...use, run }} />
  ) : (
    <Arrive {...as} use={{ ...use, run }} />
  );
}

function useUse() {
  const queryClient = useQueryClient();
  const [, go] = useLocation();
  return useAction({
    run: (body: CallArgs<'useWelcome'>['body']) => call('useWelcome', { body }),
    done: ({ person }) => `Welcome, ${person.name}. You are signed in.`,
    onDone: () => {
      void queryClient.invalidateQueries({ queryKey: meKey });
      go('/surveys', { replace: true });
    },
  });
}
