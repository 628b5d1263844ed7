import type { ReactNode } from 'react';
import { useEffect, useRef } from 'react';
import { useLocation } from 'wouter';
import { arrival } from '../app/arrival.ts';

/**
 * A page's head: title for the window, heading that takes the focus after moving here, and its main action.
 * `over` says where we are, `under` adds facts in one line.
 */
export function Page({
  title,
  windowTitle = title,
  above,
  over,
  under,
  action,
  children,
}: {
  title: string;
  /** For the window, when the heading alone doesn't say where one is. */
  windowTitle?: string;
  /** Stands between what is above the heading and the heading: the sections of a survey. */
  above?: ReactNode;
  over?: ReactNode;
  under?: ReactNode;
  action?: ReactNode;
  children: ReactNode;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [path] = useLocation();
  useEffect(() => {
    document.title = `${windowTitle} · Garboard`;
  }, [windowTitle]);
  useEffect(() => {
    if (arrival.take(path)) {
      window.scrollTo(0, 0);
      heading.current?.focus({ preventScroll: true });
    }
  }, [path]);
  return (
    <>
      {over ? <p className="over">{over}</p> : null}
      {above}
      <header className="page-head">
        <div>
          <h1 ref={heading} tabIndex={-1}>
            {title}
          </h1>
          {under ? <p className="under">{under}</p> : null}
        </div>
        {action ? <div className="row">{action}</div> : null}
      </header>
      {children}
    </>
  );
}
