import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { TextField } from '../../ui/Field.tsx';

/** The code that an authenticator app shows now, or one from paper in its place. */
export function CodeField({
  value,
  onChange,
  error,
  autoFocus,
  appOnly = false,
}: {
  value: string;
  onChange: (code: string) => void;
  error?: string | undefined;
  autoFocus?: boolean;
  /** When setting up, there is no recovery code yet. */
  appOnly?: boolean;
}) {
  const [onPaper, setOnPaper] = useState(false);
  return (
    <>
      <TextField
        key={onPaper ? 'paper' : 'app'}
        label={onPaper ? 'Recovery code' : 'Code'}
        hint={
          onPaper
            ? 'One of the codes that you wrote down, such as AB3D-EF4G-HJ5K. Each works once.'
            : 'The six digits that your authenticator app shows now.'
        }
        required
        short={!onPaper}
        autoFocus={autoFocus || onPaper}
        autoComplete="one-time-code"
        inputMode={onPaper ? 'text' : 'numeric'}
        maxLength={40}
        value={value}
        onChange={onChange}
        error={error}
      />
      {appOnly ? null : (
        <Button
          kind="quiet"
          onClick={() => {
            setOnPaper(!onPaper);
            onChange('');
          }}
        >
          {onPaper ? 'Use the app instead' : 'I don’t have the app at hand: use a recovery code'}
        </Button>
      )}
    </>
  );
}
