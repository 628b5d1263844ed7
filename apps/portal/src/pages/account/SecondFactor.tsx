import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count, formatInstantDay } from '../../ui/format.ts';
import { CodeField } from '../session/CodeField.tsx';
import type { Means } from './PresentPassword.tsx';
import { RecoveryCodes } from './RecoveryCodes.tsx';
import { SetUpApp } from './SetUpApp.tsx';

type Doing = 'set-up' | 'renew' | 'remove';

/** Codes of an authenticator app, asked for beside password or link. */
export function SecondFactor({ means }: { means: Means }) {
  const [doing, setDoing] = useState<Doing | null>(null);
  const [codes, setCodes] = useState<string[]>();
  const { secondFactorSince: since, recoveryCodesLeft: left } = means;
  const close = () => setDoing(null);
  return (
    <section className="stack">
      <h2>Second factor</h2>
      <p className="measure">
        {since
          ? `Since ${formatInstantDay(since)} signing in takes a code of your authenticator app too. You have ${count(left, 'recovery code')} left.`
          : 'With a second factor, signing in takes a code from an app on your telephone too. Whoever gets hold of your password or your mail can’t sign in without it.'}
      </p>
      {since && left <= 2 ? <p className="signal">Make new recovery codes before the last is used.</p> : null}
      {codes ? <RecoveryCodes codes={codes} onDone={() => setCodes(undefined)} /> : null}
      {doing === 'set-up' ? (
        <SetUpApp
          means={means}
          onClose={close}
          onCodes={(made) => {
            setCodes(made);
            close();
          }}
        />
      ) : null}
      {doing === 'renew' || doing === 'remove' ? (
        <ShowCode
          key={doing}
          doing={doing}
          onClose={close}
          onCodes={(made) => {
            setCodes(made);
            close();
          }}
        />
      ) : null}
      {doing || codes ? null : since ? (
        <div className="row">
          <Button onClick={() => setDoing('renew')}>Make new recovery codes</Button>
          <Button onClick={() => setDoing('remove')}>Do without codes</Button>
        </div>
      ) : (
        <Button onClick={() => setDoing('set-up')}>Set up a second factor</Button>
      )}
    </section>
  );
}

const words = {
  renew: { why: 'The codes that you have now will no longer work.', button: 'Make new codes' },
  remove: { why: 'From then on your password or a link is enough.', button: 'Do without codes' },
};

function ShowCode({
  doing,
  onClose,
  onCodes,
}: {
  doing: 'renew' | 'remove';
  onClose: () => void;
  onCodes: (codes: string[]) => void;
}) {
  const [code, setCode] = useState('');
  const touches = ['getSignInMeans'] as const;
  const renew = useAction({
    run: (given: string) => call('renewRecoveryCodes', { body: { code: given } }),
    touches,
    onDone: ({ recoveryCodes }) => onCodes(recoveryCodes),
  });
  const remove = useAction({
    run: (given: string) => call('removeSecondFactor', { body: { code: given } }),
    done: 'Signing in takes no code any more.',
    touches,
    onDone: onClose,
  });
  const action = doing === 'renew' ? renew : remove;
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        action.run(code);
      }}
    >
      <p>{words[doing].why}</p>
      <ErrorNotice error={action.error} />
      <CodeField value={code} onChange={setCode} autoFocus />
      <div className="actions">
        <Button kind="main" type="submit" busy={action.busy} busyLabel="Checking…">
          {words[doing].button}
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
