import { useState } from 'react';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { NewPasswordFields, useNewPassword } from '../session/NewPassword.tsx';
import { type Means, PresentPassword } from './PresentPassword.tsx';

/** Setting or changing the password. */
export function Password({ means }: { means: Means }) {
  const [changing, setChanging] = useState(false);
  return (
    <section className="stack">
      <h2>Password</h2>
      <p className="measure">
        {means.passwordSet
          ? 'You have a password. A link by mail signs you in as well.'
          : 'You have no password: each time you sign in, a link is sent to your address. You can choose one.'}
      </p>
      {changing ? (
        <ChangePassword means={means} onClose={() => setChanging(false)} />
      ) : (
        <Button onClick={() => setChanging(true)}>
          {means.passwordSet ? 'Change the password' : 'Choose a password'}
        </Button>
      )}
    </section>
  );
}

function ChangePassword({ means, onClose }: { means: Means; onClose: () => void }) {
  const [present, setPresent] = useState('');
  const chosen = useNewPassword();
  const needed = means.passwordSet ? !(means.fresh && means.byLink) : !means.fresh;
  const change = useAction({
    run: (body: CallArgs<'changePassword'>['body']) => call('changePassword', { body }),
    done: 'Your password is changed. You were signed out everywhere else.',
    touches: ['getSignInMeans', 'listSessions'],
    onDone: onClose,
  });
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        const password = chosen.take();
        if (password === null) return;
        change.run({ password, ...(present ? { currentPassword: present } : {}) });
      }}
    >
      <ErrorNotice error={change.error} />
      <PresentPassword
        means={means}
        needed={needed}
        value={present}
        onChange={setPresent}
        error={change.error}
      />
      <NewPasswordFields of={chosen} error={change.error} label="New password" />
      <p className="soft">You will be signed out everywhere else.</p>
      <div className="actions">
        <Button kind="main" type="submit" busy={change.busy} busyLabel="Saving…">
          Save the password
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
