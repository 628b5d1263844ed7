import { useState } from 'react';
import type { Item } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction, useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { CopyField } from '../../ui/CopyField.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { formatInstant, formatInstantDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Table } from '../../ui/Table.tsx';
import { MakeKey } from './MakeKey.tsx';
import type { Means } from './PresentPassword.tsx';
import { roleWords } from './roleWords.ts';

type Key = Item<'listApiKeys'>;

/** Keys by which programs act for the person; most people need none. */
export function ApiKeys({ means }: { means: Means }) {
  const list = useList('listApiKeys', {});
  const [making, setMaking] = useState(false);
  const [made, setMade] = useState<{ name: string; token: string }>();
  const [ending, setEnding] = useState<Key>();
  const end = useAction({
    run: (key: Key) => call('revokeApiKey', { params: { id: key.id } }),
    done: (_, key) => `The key “${key.name}” no longer works.`,
    touches: ['listApiKeys'],
    onDone: () => setEnding(undefined),
  });
  return (
    <section className="stack">
      <h2>Keys for programs</h2>
      <p className="measure">
        For other systems that read from Garboard or write into it by its{' '}
        <a href="/docs">programming interface</a>. A key sees and does what you may in one role with one firm,
        never more. If no program of yours asks for one, you need none.
      </p>
      {made ? (
        <div className="notice">
          <p>
            <strong>The key “{made.name}” is made.</strong> Take it now: it is shown this once.
          </p>
          <CopyField label="Key" value={made.token} />
          <div className="actions">
            <Button onClick={() => setMade(undefined)}>I have it</Button>
          </div>
        </div>
      ) : null}
      <MoreList list={list} what="your keys" empty={<p className="soft">You have no keys.</p>}>
        {(keys) => (
          <Table
            caption="The newest first"
            rows={keys}
            rowKey={(key) => key.id}
            columns={[
              {
                key: 'name',
                heading: 'Key',
                cell: (key) => (
                  <>
                    {key.name} <small>{key.beginning}…</small>
                  </>
                ),
              },
              {
                key: 'role',
                heading: 'Acts as',
                cell: (key) => `${roleWords[key.role]}, ${key.firm.name}`,
              },
              {
                key: 'access',
                heading: 'May',
                cell: (key) => (key.access === 'write' ? 'Read and write' : 'Read'),
              },
              {
                key: 'used',
                heading: 'Last used',
                cell: (key) => (key.lastUsedAt ? formatInstant(key.lastUsedAt) : 'Never'),
              },
              { key: 'until', heading: 'Until', cell: untilOf },
              {
                key: 'end',
                heading: 'Action',
                cell: (key) => (
                  <Button kind="quiet" aria-label={`End the key ${key.name}`} onClick={() => setEnding(key)}>
                    End
                  </Button>
                ),
              },
            ]}
          />
        )}
      </MoreList>
      {making ? (
        <MakeKey
          means={means}
          onClose={() => setMaking(false)}
          onMade={(key) => {
            setMade(key);
            setMaking(false);
          }}
        />
      ) : (
        <Button onClick={() => setMaking(true)}>Make a key</Button>
      )}
      {ending ? (
        <ConfirmDialog
          title={`End the key “${ending.name}”?`}
          confirmLabel="End the key"
          busy={end.busy}
          onConfirm={() => end.run(ending)}
          onClose={() => setEnding(undefined)}
        >
          <p>
            The program that uses it can no longer get in. This can’t be undone; make a new key for it then.
          </p>
          <ErrorNotice error={end.error} />
        </ConfirmDialog>
      ) : null}
    </section>
  );
}

/** The last day on which it works, which ends half a day into the next one in UTC. */
function untilOf({ expiresAt }: Key): string {
  if (!expiresAt) return 'No end';
  if (Date.parse(expiresAt) < Date.now()) return 'Has run out';
  return formatInstantDay(new Date(Date.parse(expiresAt) - 86_400_000).toISOString(), 'UTC');
}
