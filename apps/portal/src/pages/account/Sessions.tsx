import type { Item } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction, useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { formatInstant } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Table } from '../../ui/Table.tsx';

type Session = Item<'listSessions'>;

const nameOf = (session: Session) => session.device || 'A program that doesn’t say what it is';

/** Where one is signed in, and the way out of each. */
export function Sessions() {
  const list = useList('listSessions', {});
  const touches = ['listSessions'] as const;
  const end = useAction({
    run: (session: Session) => call('endSession', { params: { id: session.id } }),
    done: (_, session) => `Signed out: ${nameOf(session)}.`,
    touches,
  });
  const endOthers = useAction({
    run: (_: undefined) => call('endOtherSessions', {}),
    done: 'You are signed out everywhere but here.',
    touches,
  });
  const others = list.items?.some((session) => !session.current) ?? false;
  return (
    <section className="stack">
      <h2>Where you are signed in</h2>
      <p className="measure">
        If there is one that you don’t know, sign it out and change your password. A session ends by itself
        after two weeks without use.
      </p>
      <ErrorNotice error={end.error ?? endOthers.error} />
      <MoreList list={list} what="your sessions" empty={<p>Nowhere.</p>}>
        {(sessions) => (
          <Table
            caption="The newest first"
            rows={sessions}
            rowKey={(session) => session.id}
            columns={[
              {
                key: 'device',
                heading: 'Browser',
                cell: (session) => (
                  <>
                    {nameOf(session)}
                    {session.current ? <small>This one</small> : null}
                  </>
                ),
              },
              { key: 'seen', heading: 'Last used', cell: (session) => formatInstant(session.lastSeenAt) },
              { key: 'since', heading: 'Since', cell: (session) => formatInstant(session.createdAt) },
              { key: 'address', heading: 'From', cell: (session) => session.address },
              {
                key: 'end',
                heading: 'Action',
                cell: (session) =>
                  session.current ? null : (
                    <Button
                      kind="quiet"
                      aria-label={`Sign out ${nameOf(session)}, signed in ${formatInstant(session.createdAt)}`}
                      onClick={() => end.run(session)}
                    >
                      Sign out
                    </Button>
                  ),
              },
            ]}
          />
        )}
      </MoreList>
      {others ? (
        <Button busy={endOthers.busy} busyLabel="Signing out…" onClick={() => endOthers.run(undefined)}>
          Sign out everywhere else
        </Button>
      ) : null}
    </section>
  );
}
