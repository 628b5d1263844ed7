import { useState } from 'react';
import { fieldError } from '../../api/problems.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { Page } from '../../ui/Page.tsx';
import { NewPasswordFields, useNewPassword } from './NewPassword.tsx';
import type { UseLink } from './WelcomeForms.tsx';

/** The first account of an installation: its principal and firm. */
export function FirstAccount({ use }: { use: UseLink }) {
  const [name, setName] = useState('');
  const [email, setEmail] = useState('');
  const [firmName, setFirmName] = useState('');
  const chosen = useNewPassword();
  return (
    <Page title="Set up your firm" under="The first account is the principal’s.">
      <form
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          const password = chosen.take();
          if (password !== null) use.run({ password, name, email, firmName });
        }}
      >
        <ErrorNotice error={use.error} />
        <TextField
          label="Name of the firm"
          required
          maxLength={160}
          value={firmName}
          onChange={setFirmName}
          autoComplete="organization"
          error={fieldError(use.error, '/firmName')}
        />
        <TextField
          label="Your e-mail"
          type="email"
          required
          value={email}
          onChange={setEmail}
          autoComplete="username"
          error={fieldError(use.error, '/email')}
        />
        <TextField
          label="Your name"
          required
          maxLength={120}
          value={name}
          onChange={setName}
          autoComplete="name"
          hint="As it should stand in reports and histories."
          error={fieldError(use.error, '/name')}
        />
        <NewPasswordFields of={chosen} error={use.error} />
        <div className="actions">
          <Button kind="main" type="submit" busy={use.busy} busyLabel="Saving…">
            Create the account
          </Button>
        </div>
      </form>
    </Page>
  );
}
