import { useQueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { lazy, Suspense, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useAnswer } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { Loading } from '../ui/EmptyState.tsx';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import type { Me } from './session.tsx';
import { meKey } from './session.tsx';

/** The head of every page: the name, where one can go, who is signed in. */
export function Layout({ me, children }: { me: Me | null; children: ReactNode }) {
  const [path] = useLocation();
  return (
    <>
      <a className="skip-link" href="#content">
        Skip to the content
      </a>
      <div className="masthead">
        <header className="masthead-inner">
          <Link href="/" className="wordmark">
            <Mark />
            Garboard
          </Link>
          {me ? (
            <>
              <nav aria-label="Garboard">
                <ul className="site-nav">
                  {places(me).map(({ href, label }) => (
                    <li key={href}>
                      <Link href={href} aria-current={path.startsWith(href) ? 'page' : undefined}>
                        {label}
                      </Link>
                    </li>
                  ))}
                </ul>
              </nav>
              <Who me={me} />
            </>
          ) : null}
        </header>
      </div>
      <main id="content" className="main" tabIndex={-1}>
        <ErrorBoundary key={screenAt(path)}>
          <Suspense fallback={<Loading what="the page" />}>{children}</Suspense>
        </ErrorBoundary>
      </main>
    </>
  );
}

/** Every address is a screen of its own, but a new finding stays on its screen when its draft gets an address. */
function screenAt(path: string): string {
  return path.replace(/\/findings\/(new|[^/]+\/edit)$/, '/findings/editor');
}

function places(me: Me) {
  const common = [
    { href: '/surveys', label: 'Surveys' },
    { href: '/recommendations', label: 'Recommendations' },
  ];
  if (!me.firmRoles.length) return common;
  return [
    ...common,
    { href: '/expiries', label: 'What expires' },
    { href: '/vessels', label: 'Vessels' },
    { href: '/catalogue', label: 'Catalogue' },
    { href: '/library', label: 'Photo library' },
    { href: '/invoices', label: 'Invoices' },
    { href: '/firm', label: 'Firm' },
  ];
}

const SignOut = lazy(() => import('../pages/capture/SignOut.tsx'));

/** Who is signed in, and the way out. */
export function Who({ me }: { me: Me }) {
  const queryClient = useQueryClient();
  const [, go] = useLocation();
  const [leaving, setLeaving] = useState(false);
  return (
    <div className="who">
      <Told />
      <span>
        <Link href="/account" aria-label={`${me.person.name}, your account`}>
          {me.person.name}
        </Link>
      </span>
      <Button kind="quiet" busy={leaving} onClick={() => setLeaving(true)}>
        Sign out
      </Button>
      {leaving ? (
        <Suspense>
          <SignOut
            me={me}
            onStay={() => setLeaving(false)}
            onGone={() => {
              // First who is signed in, whom the page watches; then all that was answered to them.
              queryClient.setQueryData(meKey, null);
              queryClient.removeQueries({ predicate: ({ queryKey }) => queryKey[0] !== meKey[0] });
              queryClient.getMutationCache().clear();
              sessionStorage.clear();
              go('/');
            }}
          />
        </Suspense>
      ) : null}
    </div>
  );
}

/** How often it is asked whether there is something new to be told, in milliseconds. */
const lookEveryMs = 60_000;

/** The way to what one was told, with how much of it isn't read. */
function Told() {
  const { data } = useAnswer('countUnreadNotices', {}, { again: () => lookEveryMs });
  const [path] = useLocation();
  const unread = data?.unread ?? 0;
  return (
    <Link href="/notices" aria-current={path.startsWith('/notices') ? 'page' : undefined}>
      {unread === 0 ? 'Notices' : <strong>{`Notices, ${unread >= 100 ? '99+' : unread} new`}</strong>}
    </Link>
  );
}

/** Keel with a garboard strake on either side, the port one in the signal colour. */
function Mark() {
  return (
    <svg viewBox="0 0 32 32" aria-hidden="true" focusable="false" className="mark">
      <path d="M13 3v26h6V3" />
      <path className="strake" d="M13 21 2 13v6l11 9z" />
      <path d="m19 21 11-8v6l-11 9z" />
    </svg>
  );
}
