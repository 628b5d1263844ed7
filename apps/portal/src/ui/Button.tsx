import type { ButtonHTMLAttributes, ReactNode } from 'react';
import { Link } from 'wouter';

type Kind = 'main' | 'plain' | 'quiet';

interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  kind?: Kind;
  /** While true the button says so, stays focusable and does nothing. */
  busy?: boolean;
  busyLabel?: string;
}

/** A button with words. `main` is for the page's one main action. */
export function Button({
  kind = 'plain',
  busy = false,
  busyLabel,
  children,
  onClick,
  type = 'button',
  ...rest
}: ButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      className={`button button-${kind}`}
      aria-disabled={busy || undefined}
      onClick={(event) => {
        if (busy) event.preventDefault();
        else onClick?.(event);
      }}
    >
      {busy ? (busyLabel ?? children) : children}
    </button>
  );
}

/** A link that looks like a button: it goes somewhere, it changes nothing. */
export function ButtonLink({
  href,
  kind = 'plain',
  children,
}: {
  href: string;
  kind?: Kind;
  children: ReactNode;
}) {
  return (
    <Link href={href} className={`button button-${kind}`}>
      {children}
    </Link>
  );
}
