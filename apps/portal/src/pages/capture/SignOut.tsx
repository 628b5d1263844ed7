import { useEffect, useRef, useState } from 'react';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import type { Me } from '../../app/session.tsx';
import { forgetPerson } from '../../capture/identity.ts';
import { countUnsent, leaveTelephone } from '../../capture/leave.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { count } from '../../ui/format.ts';

/** Signs out; asks first when something kept on this device has not been sent. */
export default function SignOut({ me, onStay, onGone }: { me: Me; onStay: () => void; onGone: () => void }) {
  const [unsent, setUnsent] = useState(0);
  const [failed, setFailed] = useState(false);
  const [leaving] = useState(() => async (asked: boolean) => {
    const keeps = 'indexedDB' in window;
    // A browser that keeps nothing at all must not hold anybody in.
    const waiting = keeps ? await countUnsent(me.person.id).catch(() => 0) : 0;
    if (waiting > 0 && !asked) {
      setUnsent(waiting);
      return;
    }
    try {
      await call('deleteSession', {});
    } catch (error) {
      // A session that has ended needs no ending; without a connection it would live on unseen.
      if (!isStatus(error, 401)) {
        setFailed(true);
        return;
      }
    }
    forgetPerson();
    if (keeps) await leaveTelephone(me.person.id).catch(() => undefined);
    onGone();
  });
  const begun = useRef(false);
  useEffect(() => {
    if (!begun.current) void leaving(false);
    begun.current = true;
  }, [leaving]);
  if (failed) {
    return (
      <Dialog title="You are still signed in" onClose={onStay} role="alertdialog">
        <p>The server could not be reached to end your session. Sign out again when there is signal.</p>
        <Button onClick={onStay}>Stay signed in</Button>
      </Dialog>
    );
  }
  if (unsent === 0) return null;
  return (
    <Dialog title="Sign out with something unsent?" onClose={onStay} role="alertdialog">
      <p>
        {count(unsent, 'thing')} kept on this device {unsent === 1 ? 'has' : 'have'} not been sent. Nobody
        else who signs in here sees {unsent === 1 ? 'it' : 'them'}; you find {unsent === 1 ? 'it' : 'them'}{' '}
        again when you sign in here.
      </p>
      <div className="actions">
        <Button onClick={onStay} autoFocus>
          Stay and send first
        </Button>
        <Button kind="main" onClick={() => void leaving(true)}>
          Sign out
        </Button>
      </div>
    </Dialog>
  );
}
