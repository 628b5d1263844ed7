import { useEffect, useRef } from 'react';
import { explain } from '../api/problems.ts';
import { Button } from './Button.tsx';

/** What went wrong and what to do about it; takes the focus so that it is heard and seen. */
export function ErrorNotice({
  error,
  onRetry,
  quiet = false,
}: {
  error: unknown;
  onRetry?: () => void;
  /** Leaves the focus where it is: for a list that failed to load. */
  quiet?: boolean;
}) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (error && !quiet) box.current?.focus();
  }, [error, quiet]);
  if (!error) return null;
  const { title, detail, fields } = explain(error);
  return (
    <div ref={box} className="notice notice-error" role="alert" tabIndex={-1}>
      <p>{title}</p>
      {detail && detail !== title ? <p>{detail}</p> : null}
      {fields.length ? (
        <ul>
          {fields.map((field) => (
            <li key={field}>{field}</li>
          ))}
        </ul>
      ) : null}
      {onRetry ? <Button onClick={onRetry}>Try again</Button> : null}
    </div>
  );
}
