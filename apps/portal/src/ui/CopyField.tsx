import { useRef } from 'react';
import { Button } from './Button.tsx';
import { Field } from './Field.tsx';
import { useStatus } from './Status.tsx';

/** A text that is shown to be taken elsewhere: it can be selected, and copied at a press. */
export function CopyField({ label, hint, value }: { label: string; hint?: string; value: string }) {
  const input = useRef<HTMLInputElement>(null);
  const say = useStatus();
  return (
    <div className="copy-field">
      <Field label={label} hint={hint}>
        {(control) => (
          <input
            {...control}
            ref={input}
            className="input"
            readOnly
            value={value}
            onFocus={(event) => event.target.select()}
          />
        )}
      </Field>
      <Button
        onClick={async () => {
          try {
            await navigator.clipboard.writeText(value);
            say('Copied.');
          } catch {
            // Over plain HTTP there is no clipboard for pages; selecting it is half of the way.
            input.current?.select();
            say('Selected. Copy it with your keyboard.');
          }
        }}
      >
        Copy
      </Button>
    </div>
  );
}
