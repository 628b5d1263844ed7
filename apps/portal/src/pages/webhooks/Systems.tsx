import { useState } from 'react';
import { Link } from 'wouter';
import { useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { CopyField } from '../../ui/CopyField.tsx';
import { count } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { Table } from '../../ui/Table.tsx';
import { roleWords } from '../account/roleWords.ts';
import { AddSystem } from './AddSystem.tsx';

export const stateWords = {
  active: 'Is told',
  paused: 'Paused by you',
  disabled: 'Switched off after failing',
} as const;

/** Other systems that are told of events, each with what became of its messages. */
export default function Systems() {
  const list = useList('listWebhookEndpoints', {});
  const [adding, setAdding] = useState(false);
  const [secret, setSecret] = useState<string>();
  return (
    <Page title="Other systems" over="Account">
      <div className="stack-wide">
        <p className="measure">
          Garboard can tell a system of yours, such as the one that keeps your policies, when something
          happens: it sends a short signed message with ids to an address (webhooks by the Standard Webhooks
          specification). What they stand for is read by a <Link href="/account">key for programs</Link>.
        </p>
        {secret ? <NewSecret secret={secret} onDone={() => setSecret(undefined)} /> : null}
        <MoreList list={list} what="your systems" empty={<p className="soft">No system is told yet.</p>}>
          {(systems) => (
            <Table
              caption="The newest first"
              rows={systems}
              rowKey={(system) => system.id}
              columns={[
                {
                  key: 'label',
                  heading: 'System',
                  cell: (system) => (
                    <>
                      <Link href={`/systems/${system.id}`}>{system.label}</Link> <small>{system.url}</small>
                    </>
                  ),
                },
                {
                  key: 'for',
                  heading: 'For',
                  cell: (system) =>
                    system.role === 'principal'
                      ? system.firm.name
                      : `You as ${(roleWords as Record<string, string>)[system.role]?.toLowerCase()}, ${system.firm.name}`,
                },
                {
                  key: 'kinds',
                  heading: 'Told of',
                  cell: (system) => count(system.kinds.length, 'kind of event', 'kinds of event'),
                },
                {
                  key: 'state',
                  heading: 'State',
                  cell: (system) => (
                    <>
                      {stateWords[system.state]} {system.problem ? <small>{system.problem}</small> : null}
                    </>
                  ),
                },
              ]}
            />
          )}
        </MoreList>
        {adding ? (
          <AddSystem
            onClose={() => setAdding(false)}
            onMade={(made) => {
              setSecret(made);
              setAdding(false);
            }}
          />
        ) : (
          <Button kind="main" onClick={() => setAdding(true)}>
            Add a system
          </Button>
        )}
      </div>
    </Page>
  );
}

/** The secret by which a receiver checks messages, shown once. */
export function NewSecret({ secret, onDone }: { secret: string; onDone: () => void }) {
  return (
    <div className="notice">
      <p>
        <strong>Take the secret now: it is shown this once.</strong> Your system checks by it that a message
        is Garboard’s.
      </p>
      <CopyField label="Secret" value={secret} />
      <div className="actions">
        <Button onClick={onDone}>I have it</Button>
      </div>
    </div>
  );
}
