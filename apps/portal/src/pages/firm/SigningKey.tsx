import { maxP12Bytes } from '@garboard/contract/limits';
import type { SigningKey as Key } from '@garboard/contract/signing-key';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { Field, TextField } from '../../ui/Field.tsx';
import { formatBytes, formatInstant, formatInstantDay } from '../../ui/format.ts';

/** The key that signs the firm's documents: its certificate for the staff, changing it for a principal. */
export function SigningKey({ firmId, editable }: { firmId: string; editable: boolean }) {
  const [adding, setAdding] = useState(false);
  const [removing, setRemoving] = useState(false);
  const answer = useAnswer('getSigningKey', { params: { id: firmId } });
  const remove = useAction({
    run: (_: undefined) => call('deleteSigningKey', { params: { id: firmId } }),
    done: 'The signing key is removed.',
    touches: ['getSigningKey'],
    onDone: () => setRemoving(false),
  });
  if (!answer.data) {
    return answer.error ? (
      <ErrorNotice error={answer.error} onRetry={() => void answer.refetch()} />
    ) : (
      <Loading what="the signing key" />
    );
  }
  const { key } = answer.data;
  return (
    <section className="stack">
      <h2>Signing key</h2>
      {key ? (
        <KeyFacts of={key} />
      ) : (
        <p className="measure">
          The firm has no signing key yet. Reports and letters are digitally signed, so none can be issued
          until a principal adds one.
        </p>
      )}
      {!editable ? null : adding ? (
        <AddKey firmId={firmId} onClose={() => setAdding(false)} />
      ) : (
        <div className="row">
          <Button onClick={() => setAdding(true)}>{key ? 'Replace the key' : 'Add a signing key'}</Button>
          {key ? <Button onClick={() => setRemoving(true)}>Remove it</Button> : null}
        </div>
      )}
      {removing ? (
        <ConfirmDialog
          title="Remove the signing key?"
          confirmLabel="Remove the key"
          busy={remove.busy}
          onConfirm={() => remove.run(undefined)}
          onClose={() => setRemoving(false)}
        >
          <p>
            Nothing can be issued until there is another. Documents that are issued keep their signature. The
            key can’t be got back from here: keep your P12 file.
          </p>
          <ErrorNotice error={remove.error} />
        </ConfirmDialog>
      ) : null}
    </section>
  );
}

function KeyFacts({ of: key }: { of: Key }) {
  return (
    <>
      {key.state === 'usable' ? null : (
        <p className="signal">
          {key.state === 'expired' ? 'The certificate has expired.' : 'The certificate is not valid yet.'}{' '}
          Nothing can be issued with it.
        </p>
      )}
      <Facts
        facts={[
          ['Certificate of', key.subject],
          [
            'Issued by',
            key.selfSigned ? 'The firm itself: readers will be told that nobody vouches for it' : key.issuer,
          ],
          ['Valid', `${formatInstantDay(key.validFrom)} to ${formatInstantDay(key.validUntil)}`],
          ['Key', key.algorithm],
          [
            'SHA-256',
            <span key="sha" className="text">
              {key.fingerprint.match(/.{1,4}/g)?.join(' ')}
            </span>,
          ],
          ['Added', `${formatInstant(key.addedAt)}, ${key.addedBy}`],
        ]}
      />
    </>
  );
}

async function base64Of(file: File): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}

function AddKey({ firmId, onClose }: { firmId: string; onClose: () => void }) {
  const [file, setFile] = useState<File>();
  const [passphrase, setPassphrase] = useState('');
  const [problem, setProblem] = useState('');
  const add = useAction({
    run: async (given: { file: File; passphrase: string }) =>
      call('putSigningKey', {
        params: { id: firmId },
        body: { p12: await base64Of(given.file), passphrase: given.passphrase },
      }),
    done: 'The signing key is kept. Documents are signed with it from now on.',
    touches: ['getSigningKey'],
    onDone: onClose,
  });
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        if (!file) setProblem('Choose the P12 file.');
        else if (file.size > maxP12Bytes) setProblem(`A P12 file has ${formatBytes(maxP12Bytes)} at most.`);
        else add.run({ file, passphrase });
      }}
    >
      <ErrorNotice error={add.error} />
      <Field
        label="P12 file"
        hint="Certificate and private key in one file that ends in .p12 or .pfx, as the issuer of your certificate gave it to you."
        error={problem || fieldError(add.error, '/p12')}
      >
        {(control) => (
          <input
            {...control}
            type="file"
            accept=".p12,.pfx,application/x-pkcs12"
            onChange={(event) => {
              setFile(event.target.files?.[0]);
              setProblem('');
              add.clear();
            }}
          />
        )}
      </Field>
      <TextField
        label="Passphrase"
        hint="It opens the file once and is not kept. The key is kept encrypted and never leaves the server."
        type="password"
        autoComplete="off"
        maxLength={400}
        value={passphrase}
        onChange={setPassphrase}
        error={fieldError(add.error, '/passphrase')}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={add.busy} busyLabel="Checking…">
          Keep this key
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
