import { useQuery } from '@tanstack/react-query';
import { announce } from '../../capture/changes.ts';
import { spaceLeft } from '../../capture/space.ts';
import { Button } from '../../ui/Button.tsx';
import { formatBytes } from '../../ui/format.ts';
import { useKept, useSignal } from './data.ts';
import { Frame } from './Frame.tsx';
import { KeptRow } from './KeptRow.tsx';
import { useOnBoard } from './person.ts';
import { useBack } from './useBack.ts';

/** Everything kept on this telephone, and what has become of it. */
export function KeptList() {
  const items = useKept();
  const signal = useSignal();
  const { ended } = useOnBoard();
  const back = useBack();
  const unsent = items.filter(({ state }) => state !== 'sent');
  const sent = items.filter(({ state }) => state === 'sent');
  const waiting = unsent.some(({ state }) => state === 'waiting');
  const sending = unsent.some(({ state }) => state === 'sending');
  return (
    <Frame title="Sent and unsent" over="On board" back={back}>
      {waiting && !signal ? (
        <p>There is no signal. Everything below stays here and is sent by itself once there is.</p>
      ) : null}
      {waiting && signal && !ended && !sending ? (
        <div className="capture-actions">
          <Button onClick={() => announce('kept')}>Send now</Button>
        </div>
      ) : null}
      {unsent.length ? (
        <>
          <h2>Not sent yet, {unsent.length}</h2>
          <ul className="capture-lines">
            {unsent.map((item) => (
              <KeptRow key={item.id} item={item} />
            ))}
          </ul>
        </>
      ) : null}
      {sent.length ? (
        <>
          <h2>Sent, {sent.length}</h2>
          <ul className="capture-lines">
            {sent
              .toSorted((a, b) => (b.sentAt ?? 0) - (a.sentAt ?? 0))
              .map((item) => (
                <KeptRow key={item.id} item={item} />
              ))}
          </ul>
          <p className="soft small">What was sent leaves this list after a week; it is in the survey.</p>
        </>
      ) : null}
      {items.length ? null : <p>Nothing has been kept on this telephone yet.</p>}
      <Room changes={items.length} />
    </Frame>
  );
}

/** How much room is left, and whether the browser will leave it alone. */
function Room({ changes }: { changes: number }) {
  const space = useQuery({
    queryKey: ['space', changes],
    queryFn: spaceLeft,
    networkMode: 'always',
    retry: false,
  });
  if (!space.data) return null;
  const { used, free, lasting } = space.data;
  return (
    <p className="soft small">
      The portal takes {formatBytes(used)} on this telephone and may take {formatBytes(free)} more.
      {lasting
        ? ''
        : ' If the telephone runs short of room, the browser may clear what is kept: put the portal on the home screen, and send soon.'}
    </p>
  );
}
