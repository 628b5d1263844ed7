import { useState } from 'react';
import type { KeyName } from '../app/keys.ts';
import { keys, setKeysOn, useKeys, useKeysOn } from '../app/keys.ts';
import { Button } from './Button.tsx';
import { Dialog } from './Dialog.tsx';
import { Checkbox } from './Field.tsx';

/** A button that shows which keys there are, and listens for the one that does the same. */
export function KeyHelp() {
  const [open, setOpen] = useState(false);
  const on = useKeysOn();
  useKeys({ help: () => setOpen(true) });
  return (
    <>
      <Button kind="quiet" onClick={() => setOpen(true)}>
        Keyboard
      </Button>
      {open ? (
        <Dialog title="Working by keyboard" onClose={() => setOpen(false)}>
          <dl className="facts">
            {(Object.keys(keys) as KeyName[]).map((name) => (
              <KeyRow key={name} name={name} />
            ))}
            <dt>Known defect</dt>
            <dd>Type some of its words; Enter takes the first, the arrow keys choose another</dd>
            <dt>Photos by number</dt>
            <dd>Type their numbers, such as 3, 7-9; the order is that of the report</dd>
            <dt>Escape</dt>
            <dd>Closes a sheet</dd>
          </dl>
          <p className="soft">On a Mac, Command + Enter and Option in the place of Alt.</p>
          <Checkbox label="Use these keys in this browser" checked={on} onChange={setKeysOn} />
          <div className="actions">
            <Button kind="main" onClick={() => setOpen(false)}>
              Close
            </Button>
          </div>
        </Dialog>
      ) : null}
    </>
  );
}

function KeyRow({ name }: { name: KeyName }) {
  return (
    <>
      <dt>
        <kbd>{keys[name].shown}</kbd>
      </dt>
      <dd>{keys[name].does}</dd>
    </>
  );
}
