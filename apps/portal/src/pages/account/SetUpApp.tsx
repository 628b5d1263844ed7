import { useState } from 'react';
import { renderSVG } from 'uqr';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { CopyField } from '../../ui/CopyField.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { SvgPicture } from '../../ui/SvgPicture.tsx';
import { CodeField } from '../session/CodeField.tsx';
import { type Means, PresentPassword } from './PresentPassword.tsx';

interface Props {
  means: Means;
  onClose: () => void;
  onCodes: (codes: string[]) => void;
}

/** Two steps: show that it is you, then let the app read the secret and show a first code. */
export function SetUpApp({ means, onClose, onCodes }: Props) {
  const [present, setPresent] = useState('');
  const begin = useAction({
    run: (currentPassword: string) =>
      call('beginSecondFactor', { body: currentPassword ? { currentPassword } : {} }),
  });
  if (begin.output) {
    const { secret, uri } = begin.output.output;
    return <ReadSecret secret={secret} uri={uri} onClose={onClose} onCodes={onCodes} />;
  }
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        begin.run(present);
      }}
    >
      <p>
        You need an authenticator app on your telephone. Any that shows codes of six digits will do; many
        password managers have one.
      </p>
      <ErrorNotice error={begin.error} />
      <PresentPassword
        means={means}
        needed={!means.fresh}
        value={present}
        onChange={setPresent}
        error={begin.error}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={begin.busy} busyLabel="Preparing…">
          Go on
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}

function ReadSecret({
  secret,
  uri,
  onClose,
  onCodes,
}: { secret: string; uri: string } & Pick<Props, 'onClose' | 'onCodes'>) {
  const [code, setCode] = useState('');
  const confirm = useAction({
    run: (given: string) => call('confirmSecondFactor', { body: { code: given } }),
    done: 'From now on codes are asked for. You were signed out everywhere else.',
    touches: ['getSignInMeans', 'listSessions'],
    onDone: ({ recoveryCodes }) => onCodes(recoveryCodes),
  });
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        confirm.run(code);
      }}
    >
      <h3>1. Let the app read this</h3>
      <figure className="qr">
        <SvgPicture svg={renderSVG(uri, { border: 3 })} />
        <figcaption className="vh">A square code that holds the same key as the next field.</figcaption>
      </figure>
      <CopyField
        label="Or type this key into it"
        hint="Kind of code: by time, six digits."
        value={secret.replace(/(.{4})(?=.)/g, '$1 ')}
      />
      <h3>2. Type the code that it shows</h3>
      <ErrorNotice error={confirm.error} />
      <CodeField appOnly value={code} onChange={setCode} />
      <div className="actions">
        <Button kind="main" type="submit" busy={confirm.busy} busyLabel="Checking…">
          Turn it on
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
