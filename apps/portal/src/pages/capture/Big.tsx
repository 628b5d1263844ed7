import { Link } from 'wouter';

/** A place to go on to, large enough for a wet thumb. */
export function Big({ href, title, more }: { href: string; title: string; more?: string | null }) {
  return (
    <Link href={href} className="big">
      <strong>{title}</strong>
      {more ? <span>{more}</span> : null}
    </Link>
  );
}
