import { useEffect, useState } from 'react';
import { Button } from '../ui/Button.tsx';
import type { Newer } from './shell.ts';

const words = {
  not: 'It is taken when nothing is being written.',
  written: 'Something is still being written, here or in another window: save it first.',
  // Browsers let the older one come to rest first, for as long as it is used to.
  asked: 'It is being taken, which can need half a minute; go on meanwhile.',
};

/** Says in words that a newer version of the portal is here, and takes it when nothing is being written. */
export function NewerVersion() {
  const [newer, setNewer] = useState<Newer>('none');
  const [taking, setTaking] = useState<'not' | 'written' | 'asked'>('not');
  useEffect(() => {
    if (!navigator.serviceWorker) return;
    let end = () => undefined as unknown;
    let over = false;
    const begin = async () => {
      const { newerVersion } = await import('./shell.ts');
      if (over) return;
      end = newerVersion.subscribe(() => {
        setNewer(newerVersion.now());
        // What was asked for has come so far; from here on somebody may have to ask again.
        setTaking('not');
      });
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
      <p>A newer version of the portal is here. {words[taking]}</p>
      <Button
        busy={taking === 'asked'}
        onClick={async () => {
          const { takeNewer } = await import('./shell.ts');
          setTaking((await takeNewer()) ? 'asked' : 'written');
        }}
      >
        Take it now
      </Button>
    </div>
  );
}
