import type { ReactNode } from 'react';
import { useEffect } from 'react';
import { Link, useLocation } from 'wouter';
import { Button } from '../../ui/Button.tsx';
import { Page } from '../../ui/Page.tsx';
import { useKept, useSignal } from './data.ts';
import { useOnBoard } from './person.ts';
import { Unkept } from './unkept.tsx';
import { notePlace } from './useBack.ts';
import { summaryOf } from './words.ts';

/** A page for one hand: the way back on top, one thing in the middle, what is still to be sent at the bottom. */
export function Frame({
  title,
  over,
  under,
  back,
  children,
}: {
  title: string;
  over?: ReactNode;
  under?: ReactNode;
  back: { href: string; label: string };
  children: ReactNode;
}) {
  const { ended, signIn } = useOnBoard();
  const items = useKept();
  const signal = useSignal();
  const [path] = useLocation();
  useEffect(() => notePlace(path), [path]);
  const refused = items.some(({ state }) => state === 'refused');
  return (
    <div className="capture">
      <header className="capture-back">
        <Link href={back.href}>Back to {back.label}</Link>
      </header>
      <main id="content" tabIndex={-1}>
        <Page title={title} windowTitle={`${title}, on board`} over={over} under={under}>
          {ended ? (
            <div className="notice">
              <p>
                Your session has ended. You can go on: everything is kept here, and sent once you sign in.
              </p>
              <Button onClick={signIn}>Sign in to send</Button>
            </div>
          ) : null}
          <Unkept />
          {children}
        </Page>
      </main>
      <footer className="capture-foot">
        {path === '/capture/kept' ? (
          <span>{summaryOf(items, signal, ended)}</span>
        ) : (
          <Link href="/capture/kept" className={refused ? 'signal' : undefined}>
            {summaryOf(items, signal, ended)}
          </Link>
        )}
      </footer>
    </div>
  );
}
