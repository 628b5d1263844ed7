import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { isProblem } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { meKey } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { Page } from '../../ui/Page.tsx';
import { LinkAsked, useAskLink } from './AskLink.tsx';
import { CodeForm } from './CodeForm.tsx';

/** Signing in with a password or by a link; the address stays, so a link from a mail leads on afterwards. */
export default function SignIn() {
  const queryClient = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const [askingCode, setAskingCode] = useState(false);
  const signIn = useAction({
    run: (body: CallArgs<'createSession'>['body']) => call('createSession', { body }),
    done: ({ person }) => `Signed in as ${person.name}.`,
    onDone: () => queryClient.invalidateQueries({ queryKey: meKey }),
    onRefused: (error) => setAskingCode(isProblem(error, 'code-needed') || isProblem(error, 'wrong-code')),
  });
  const link = useAskLink();
  if (askingCode) {
    return (
      <Page title="Your code" under={email}>
        <CodeForm
          error={isProblem(signIn.error, 'code-needed') ? null : signIn.error}
          busy={signIn.busy}
          onCode={(code) => signIn.run({ email, password, code })}
          onBack={() => {
            signIn.clear();
            setAskingCode(false);
          }}
        />
      </Page>
    );
  }
  const askLink = () => {
    const field = form.current?.querySelector<HTMLInputElement>('input[type="email"]');
    signIn.clear();
    if (field?.reportValidity()) link.run(email);
  };
  return (
    <Page title="Sign in">
      <form
        ref={form}
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          link.clear();
          signIn.run({ email, password });
        }}
      >
        <ErrorNotice error={signIn.error ?? link.error} />
        {link.asked ? (
          <LinkAsked key={link.asked.input} email={link.asked.input} {...link.asked.output} />
        ) : null}
        <TextField
          label="E-mail"
          type="email"
          autoComplete="username"
          required
          value={email}
          onChange={setEmail}
        />
        <TextField
          label="Password"
          type="password"
          autoComplete="current-password"
          required
          value={password}
          onChange={setPassword}
        />
        <div className="actions">
          <Button kind="main" type="submit" busy={signIn.busy} busyLabel="Signing in…">
            Sign in
          </Button>
        </div>
        <p>No password, or forgotten it? A link by mail signs you in without one.</p>
        <Button busy={link.busy} busyLabel="Asking…" onClick={askLink}>
          Send me a link
        </Button>
        <p className="soft">
          Accounts are made by invitation. If your invitation has run out, have a link sent to the address
          that was invited.
        </p>
      </form>
    </Page>
  );
}
