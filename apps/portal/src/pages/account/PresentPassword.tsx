import type { Answer } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { TextField } from '../../ui/Field.tsx';

export type Means = Answer<'getSignInMeans'>;

/** Shows again who is at the keyboard, unless they have only just signed in. */
export function PresentPassword({
  means,
  needed,
  value,
  onChange,
  error,
}: {
  means: Means;
  needed: boolean;
  value: string;
  onChange: (password: string) => void;
  error: unknown;
}) {
  if (!needed) return null;
  if (!means.passwordSet) {
    return (
      <p className="notice" role="note">
        To be sure that it is you: sign out, have a link sent, sign in by it, and come back here within 15
        minutes.
      </p>
    );
  }
  return (
    <TextField
      label="Current password"
      type="password"
      autoComplete="current-password"
      hint="To be sure that it is you. Forgotten? Sign out, have a link sent and come back within 15 minutes."
      required
      value={value}
      onChange={onChange}
      error={fieldError(error, '/currentPassword')}
    />
  );
}
