import { useEffect, useState } from 'react';
import { Button } from '../ui/Button.tsx';
import type { Newer } from './shell.ts';

/** Says in words that a newer version of the portal is here, and takes it when nothing is being written. */
export function NewerVersion() {
  const [newer, setNewer] = useState<Newer>('none');
  const [written, setWritten] = useState(false);
  useEffect(() => {
    if (!navigator.serviceWorker) return;
    let end = () => undefined as unknown;
    let over = false;
    const begin = async () => {
      const { newerVersion } = await import('./shell.ts');
      if (over) return;
      end = newerVersion.subscribe(() => setNewer(newerVersion.now()));
      setNewer(newerVersion.now());
    };
    // Without a service worker there is no version but the newest.
    void navigator.serviceWorker.getRegistration().then((known) => (known ? begin() : undefined));
    return () => {
      over = true;
      end();
    };
  }, []);
  if (newer === 'none') return null;
  return (
    <div className="notice newer" role="status">
      <p>
        A newer version of the portal is here. It is taken when nothing is being written.
        {written ? ' Something is still being written, here or in another window: save it first.' : null}
      </p>
      <Button
        onClick={async () => {
          const { takeNewer } = await import('./shell.ts');
          setWritten(!(await takeNewer()));
        }}
      >
        Take it now
      </Button>
    </div>
  );
}
