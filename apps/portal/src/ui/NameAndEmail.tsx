import { fieldError } from '../api/problems.ts';
import { TextField } from './Field.tsx';

interface Props {
  name: string;
  email: string;
  onName: (name: string) => void;
  onEmail: (email: string) => void;
  /** What the server refused, to be shown at the field it belongs to. */
  error: unknown;
}

/** Whom an invitation goes to. */
export function NameAndEmail({ name, email, onName, onEmail, error }: Props) {
  return (
    <div className="fields-2">
      <TextField
        label="Name"
        required
        maxLength={120}
        value={name}
        onChange={onName}
        error={fieldError(error, '/name')}
      />
      <TextField
        label="E-mail"
        type="email"
        required
        value={email}
        onChange={onEmail}
        error={fieldError(error, '/email')}
      />
    </div>
  );
}
