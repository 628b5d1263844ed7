import { useState } from 'react';
import type { Answer, Item } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction, useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { CopyField } from '../../ui/CopyField.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count, formatInstant } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Table } from '../../ui/Table.tsx';
import { MakeLink } from './MakeLink.tsx';
import { Viewings } from './Viewings.tsx';

type Link = Item<'listShareLinks'>;

/** Links by which people without an account read this one report. */
export function ShareLinks({ reportId }: { reportId: string }) {
  const list = useList('listShareLinks', { params: { id: reportId } });
  const [making, setMaking] = useState(false);
  const [made, setMade] = useState<Answer<'createShareLink'>>();
  const [ending, setEnding] = useState<Link>();
  const [looking, setLooking] = useState<Link>();
  const end = useAction({
    run: (link: Link) => call('revokeShareLink', { params: { id: link.id } }),
    done: (_, link) => `The link for ${link.label} no longer works.`,
    touches: ['listShareLinks', 'listEvents'],
    onDone: () => setEnding(undefined),
  });
  return (
    <section className="stack" id="links">
      <h2>Share this report by a link</h2>
      <p className="measure">
        Whoever holds a link reads this report without an account, and nothing else. Each opening is counted
        and stands in the history.
      </p>
      {made ? (
        <div className="notice">
          <p>
            <strong>The link for {made.label} is made.</strong> Take it now: it is shown this once.
          </p>
          <CopyField label="Link" value={made.url} />
          {made.passcodeSet ? <p>Give the passcode by another way, such as the telephone.</p> : null}
          <div className="actions">
            <Button onClick={() => setMade(undefined)}>I have it</Button>
          </div>
        </div>
      ) : null}
      <MoreList list={list} what="the links" empty={<p className="soft">No link has been made.</p>}>
        {(links) => (
          <Table
            caption="The newest first"
            rows={links}
            rowKey={(link) => link.id}
            columns={[
              {
                key: 'label',
                heading: 'For',
                cell: (link) => (
                  <>
                    {link.label} <small>Made by {link.madeBy}</small>
                  </>
                ),
              },
              { key: 'state', heading: 'State', cell: stateOf },
              { key: 'passcode', heading: 'Passcode', cell: (link) => (link.passcodeSet ? 'Yes' : 'No') },
              {
                key: 'views',
                heading: 'Opened',
                cell: (link) =>
                  link.views ? (
                    <Button
                      kind="quiet"
                      aria-label={`${openedOf(link)}: when the link for ${link.label} was opened`}
                      onClick={() => setLooking(link)}
                    >
                      {openedOf(link)}
                    </Button>
                  ) : (
                    openedOf(link)
                  ),
              },
              {
                key: 'end',
                heading: 'Action',
                cell: (link) =>
                  link.works ? (
                    <Button
                      kind="quiet"
                      aria-label={`End the link for ${link.label}`}
                      onClick={() => setEnding(link)}
                    >
                      End
                    </Button>
                  ) : null,
              },
            ]}
          />
        )}
      </MoreList>
      {making ? (
        <MakeLink
          reportId={reportId}
          onClose={() => setMaking(false)}
          onMade={(link) => {
            setMade(link);
            setMaking(false);
          }}
        />
      ) : (
        <Button onClick={() => setMaking(true)}>Make a link</Button>
      )}
      {looking ? <Viewings link={looking} onClose={() => setLooking(undefined)} /> : null}
      {ending ? (
        <ConfirmDialog
          title={`End the link for ${ending.label}?`}
          confirmLabel="End the link"
          busy={end.busy}
          onConfirm={() => end.run(ending)}
          onClose={() => setEnding(undefined)}
        >
          <p>Whoever is reading by it now can’t go on. What was downloaded can’t be taken back.</p>
          <ErrorNotice error={end.error} />
        </ConfirmDialog>
      ) : null}
    </section>
  );
}

function stateOf(link: Link): string {
  if (link.works) return `Works until ${formatInstant(link.expiresAt)}`;
  if (link.revokedAt) return `Ended ${formatInstant(link.revokedAt)}`;
  if (Date.parse(link.expiresAt) < Date.now()) return 'Has run out';
  return link.viewLimit !== null && link.views >= link.viewLimit ? 'Used up' : 'Does not work now';
}

const openedOf = ({ views, viewLimit }: Link): string =>
  viewLimit === null ? (views ? count(views, 'time') : 'Not yet') : `${views} of ${count(viewLimit, 'time')}`;
