import type { ReactNode } from 'react';
import { Link } from 'wouter';

/** One way into a list: how many there are of what, and where they are shown. */
export interface Standing {
  key: string;
  count: number | undefined;
  words: ReactNode;
  href: string;
  current: boolean;
  /** It must not wait, when there are any. */
  urgent?: boolean;
}

/** How things stand, as a line of counts that lead to what they count; a count on its way is left out. */
export function StandingLine({ label, items }: { label: string; items: readonly Standing[] }) {
  return (
    <nav aria-label={label}>
      <ul className="standing">
        {items.map(({ key, count, words, href, current, urgent }) => (
          <li key={key}>
            <Link href={href} aria-current={current ? 'page' : undefined}>
              {count === undefined ? null : (
                <>
                  <strong className={urgent && count > 0 ? 'signal' : undefined}>
                    {count.toLocaleString('en-GB')}
                  </strong>{' '}
                </>
              )}
              {words}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
