import { useEffect, useRef } from 'react';
import { Button } from '../../ui/Button.tsx';
import { useStatus } from '../../ui/Status.tsx';

/** The recovery codes, this once: to be written down or printed, not kept beside the app. */
export function RecoveryCodes({ codes, onDone }: { codes: readonly string[]; onDone: () => void }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const say = useStatus();
  useEffect(() => heading.current?.focus(), []);
  return (
    <div className="notice">
      <h3 ref={heading} tabIndex={-1}>
        Write down your recovery codes
      </h3>
      <p className="measure">
        They are shown this once. If your telephone is lost, each of them stands in for one code. Keep them on
        paper or in a password manager, not on the telephone.
      </p>
      <ol className="codes">
        {codes.map((code) => (
          <li key={code}>{code}</li>
        ))}
      </ol>
      <div className="actions">
        <Button kind="main" onClick={onDone}>
          I have them
        </Button>
        <Button
          onClick={async () => {
            try {
              await navigator.clipboard.writeText(codes.join('\n'));
              say('Copied.');
            } catch {
              say('They could not be copied here. Write them down.');
            }
          }}
        >
          Copy
        </Button>
        <Button onClick={() => window.print()}>Print this page</Button>
      </div>
    </div>
  );
}
