import { useState } from 'react';
import { fieldError } from '../../api/problems.ts';
import { TextField } from '../../ui/Field.tsx';

/** A new password, twice; `take` answers it once both agree, else it says so and answers null. */
export function useNewPassword() {
  const [password, setPassword] = useState('');
  const [again, setAgain] = useState('');
  const [differs, setDiffers] = useState(false);
  return {
    ...{ password, setPassword, again, setAgain },
    differs: differs && password !== again,
    take: (): string | null => {
      setDiffers(password !== again);
      return password === again ? password : null;
    },
    clear: () => {
      setPassword('');
      setAgain('');
    },
  };
}

/** Its two fields. @param error what the server refused */
export function NewPasswordFields({
  of,
  error,
  label = 'Password',
}: {
  of: ReturnType<typeof useNewPassword>;
  error: unknown;
  label?: string;
}) {
  return (
    <>
      <TextField
        label={label}
        type="password"
        hint="12 characters or more. A few words that belong together only for you do well."
        required
        minLength={12}
        maxLength={200}
        value={of.password}
        onChange={of.setPassword}
        autoComplete="new-password"
        error={fieldError(error, '/password')}
      />
      <TextField
        label="The same password again"
        type="password"
        required
        value={of.again}
        onChange={of.setAgain}
        autoComplete="new-password"
        error={of.differs ? 'The two passwords differ.' : undefined}
      />
    </>
  );
}
