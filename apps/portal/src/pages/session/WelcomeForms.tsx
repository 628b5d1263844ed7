import type { CallArgs } from '../../api/client.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Page } from '../../ui/Page.tsx';
import { NewPasswordFields, useNewPassword } from './NewPassword.tsx';

/** What is done with the link. */
export interface UseLink {
  run: (fields: Omit<CallArgs<'useWelcome'>['body'], 'token'>) => void;
  busy: boolean;
  error: unknown;
}

interface Props {
  name: string;
  email: string;
  use: UseLink;
}

/** A link to sign in is used at a press, so that a mail program which looks at links doesn't use it up. */
export function Arrive({ name, email, use }: Props) {
  return (
    <Page title={`Welcome back, ${name}`} under={email}>
      <div className="stack measure">
        <ErrorNotice error={use.error} />
        <p>You are one press away. The link works once, for you alone.</p>
        <div className="actions">
          <Button kind="main" busy={use.busy} busyLabel="Signing in…" onClick={() => use.run({})}>
            Sign in
          </Button>
        </div>
        <p className="soft">
          If you forgot your password, sign in here, then choose a new one under “Your account” within 15
          minutes.
        </p>
      </div>
    </Page>
  );
}

/** The first time: a password may be chosen, or left out. */
export function Invited({ name, email, use }: Props) {
  const chosen = useNewPassword();
  return (
    <Page title="Choose a password" under={email}>
      <form
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          const password = chosen.take();
          if (password !== null) use.run({ password });
        }}
      >
        <p>
          Welcome to Garboard, {name}. With a password you can sign in at any time; without one, by a link
          that is sent to you each time.
        </p>
        <ErrorNotice error={use.error} />
        <NewPasswordFields of={chosen} error={use.error} />
        <div className="actions">
          <Button kind="main" type="submit" busy={use.busy} busyLabel="Saving…">
            Save and sign in
          </Button>
          <Button busy={use.busy} onClick={() => use.run({})}>
            Go on without a password
          </Button>
        </div>
      </form>
    </Page>
  );
}
