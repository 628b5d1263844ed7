import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { CodeField } from './CodeField.tsx';

/** Asks for the second factor's code, after what came first was right. */
export function CodeForm({
  error,
  busy,
  onCode,
  onBack,
}: {
  error: unknown;
  busy: boolean;
  onCode: (code: string) => void;
  onBack?: () => void;
}) {
  const [code, setCode] = useState('');
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        onCode(code);
      }}
    >
      <ErrorNotice error={error} />
      <CodeField value={code} onChange={setCode} autoFocus />
      <div className="actions">
        <Button kind="main" type="submit" busy={busy} busyLabel="Signing in…">
          Sign in
        </Button>
        {onBack ? <Button onClick={onBack}>Back</Button> : null}
      </div>
    </form>
  );
}
