import { useEffect } from 'react';

/** Put on the home screen from here, the portal opens on board. */
export function useManifest(): void {
  useEffect(() => {
    const link = document.querySelector<HTMLLinkElement>('link[rel="manifest"]');
    if (!link) return;
    const before = link.href;
    link.href = '/on-board.webmanifest';
    return () => {
      link.href = before;
    };
  }, []);
}
