import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { meKey } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { Page } from '../../ui/Page.tsx';

/** Signing in with e-mail and password; the address stays, so a link from a mail leads on afterwards. */
export default function SignIn() {
  const queryClient = useQueryClient();
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const signIn = useAction({
    run: (body: { email: string; password: string }) => call('createSession', { body }),
    done: ({ person }) => `Signed in as ${person.name}.`,
    onDone: () => queryClient.invalidateQueries({ queryKey: meKey }),
  });
  return (
    <Page title="Sign in">
      <form
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          signIn.run({ email, password });
        }}
      >
        <ErrorNotice error={signIn.error} />
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
        <p className="soft">
          Accounts are made by invitation. If your invitation has run out or you have lost your password, ask
          the survey firm to invite you again.
        </p>
      </form>
    </Page>
  );
}
