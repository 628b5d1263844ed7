import type { ReactNode } from 'react';
import { Component } from 'react';
import { Button } from '../ui/Button.tsx';

/** Catches a page that broke (or a part of the portal that could not be fetched) and offers a way on. */
export class ErrorBoundary extends Component<{ children: ReactNode }, { broken: boolean }> {
  override state = { broken: false };

  static getDerivedStateFromError() {
    return { broken: true };
  }

  override render() {
    if (!this.state.broken) return this.props.children;
    return (
      <div className="empty" role="alert">
        <h1>This page could not be shown</h1>
        <p>
          Either the connection was lost or the portal has been renewed since you opened it. Nothing that was
          saved is lost.
        </p>
        <Button kind="main" onClick={() => window.location.reload()}>
          Load the page again
        </Button>
      </div>
    );
  }
}
