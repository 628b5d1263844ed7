import { useState } from 'react';
import { Link } from 'wouter';
import type { Item } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction, useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Checkbox } from '../../ui/Field.tsx';
import { formatInstant } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { Table } from '../../ui/Table.tsx';

type Notice = Item<'listNotices'>;

const touches = ['listNotices', 'countUnreadNotices'] as const;

/** What the person who is signed in was told, newest first. */
export default function Notices() {
  const [unread, setUnread] = useState(false);
  const list = useList('listNotices', { query: { unread: unread ? 'true' : 'false' } });
  const open = useAction({
    run: (notice: Notice) => call('readNotices', { body: { ids: [notice.id] } }),
    touches,
  });
  const readAll = useAction({
    run: (upTo: string) => call('readNotices', { body: { upTo } }),
    done: 'All are marked as read.',
    touches,
  });
  const newest = list.items?.[0];
  const someUnread = list.items?.some((notice) => !notice.read) ?? false;
  return (
    <Page
      title="Notices"
      under={<Link href="/notices/settings">What is mailed to you, and how often</Link>}
      action={
        newest && someUnread ? (
          <Button busy={readAll.busy} busyLabel="Marking…" onClick={() => readAll.run(newest.id)}>
            Mark all as read
          </Button>
        ) : undefined
      }
    >
      <div className="stack">
        <ErrorNotice error={readAll.error} />
        <Checkbox label="Only what is not read" checked={unread} onChange={setUnread} />
        <MoreList list={list} what="your notices" empty={<Nothing unread={unread} />}>
          {(notices) => (
            <Table
              caption="The newest first"
              rows={notices}
              rowKey={(notice) => notice.id}
              columns={[
                { key: 'about', heading: 'About', cell: (notice) => notice.about },
                {
                  key: 'what',
                  heading: 'What happened',
                  cell: (notice) => (
                    <Link href={notice.path} onClick={() => (notice.read ? undefined : open.run(notice))}>
                      {notice.read ? notice.sentence : <strong>{notice.sentence}</strong>}
                    </Link>
                  ),
                },
                { key: 'at', heading: 'When', cell: (notice) => formatInstant(notice.at) },
                { key: 'read', heading: 'Read', cell: (notice) => (notice.read ? 'Read' : 'Not read') },
              ]}
            />
          )}
        </MoreList>
      </div>
    </Page>
  );
}

function Nothing({ unread }: { unread: boolean }) {
  return unread ? (
    <EmptyState title="You have read everything" />
  ) : (
    <EmptyState title="Nothing has happened yet">
      <p>Here you are told when a report is issued, evidence comes in or is decided, and what falls due.</p>
    </EmptyState>
  );
}
