import { useState } from 'react';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { Page } from '../../ui/Page.tsx';
import { LinkAsked, useAskLink } from './AskLink.tsx';

/** A link that was used, has run out or was cut in the mail: another can be had at once. */
export function SpentLink({ incomplete = false }: { incomplete?: boolean }) {
  const [email, setEmail] = useState('');
  const link = useAskLink();
  return (
    <Page title={incomplete ? 'This link is not complete' : 'This link no longer works'}>
      <form
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          link.run(email);
        }}
      >
        <p>
          {incomplete
            ? 'Copy the whole link from your mail into the address bar, or have a new one sent.'
            : 'For safety a link works once, and only for 15 minutes after it was sent. That is nothing to worry about: have a new one sent to the address that the old one came to.'}
        </p>
        <ErrorNotice error={link.error} />
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
        <div className="actions">
          <Button kind="main" type="submit" busy={link.busy} busyLabel="Asking…">
            Send me a new link
          </Button>
          <ButtonLink href="/">Sign in with a password</ButtonLink>
        </div>
      </form>
    </Page>
  );
}
