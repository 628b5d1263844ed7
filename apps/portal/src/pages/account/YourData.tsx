import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { type Means, PresentPassword } from './PresentPassword.tsx';

/** What is kept of the person: taken along as a file, or ended. */
export function YourData({ means, email }: { means: Means; email: string }) {
  const [erasing, setErasing] = useState(false);
  return (
    <section className="stack">
      <h2>Your data</h2>
      <p className="measure">
        Everything that Garboard keeps of you, with every firm, as one file that other programs can read
        (JSON).
      </p>
      <p>
        <a href="/v1/me/export" download="garboard-my-data.json">
          Take your data along
        </a>
      </p>
      {erasing ? (
        <Erase means={means} email={email} onClose={() => setErasing(false)} />
      ) : (
        <Button onClick={() => setErasing(true)}>Erase your account</Button>
      )}
    </section>
  );
}

function Erase({ means, email, onClose }: { means: Means; email: string; onClose: () => void }) {
  const [typed, setTyped] = useState('');
  const [present, setPresent] = useState('');
  const erase = useAction({
    run: () => call('eraseMe', { body: { email: typed, ...(present ? { currentPassword: present } : {}) } }),
    // Nobody is signed in any more: everything held in this window goes too.
    onDone: () => window.location.assign('/'),
  });
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        erase.run(undefined);
      }}
    >
      <h3>Erase your account</h3>
      <p>
        You can’t sign in any more, you are taken off every survey, and your name is taken out of the firms’
        records. This can’t be undone. What was issued or agreed stays as it was: reports, letters, and
        quotations that you accepted.
      </p>
      <ErrorNotice error={erase.error} />
      <TextField
        label="Your e-mail address"
        hint={`To be sure, write ${email}`}
        type="email"
        required
        value={typed}
        onChange={setTyped}
        error={fieldError(erase.error, '/email')}
      />
      <PresentPassword
        means={means}
        needed={!means.fresh}
        value={present}
        onChange={setPresent}
        error={erase.error}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={erase.busy} busyLabel="Erasing…">
          Erase my account for good
        </Button>
        <Button onClick={onClose}>Keep it</Button>
      </div>
    </form>
  );
}
