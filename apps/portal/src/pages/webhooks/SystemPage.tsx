import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { call, type Item } from '../../api/client.ts';
import { useAction, useList, useWholeList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { count, formatInstant, today } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { Table } from '../../ui/Table.tsx';
import { wordsOf } from './kindWords.ts';
import { NewSecret, stateWords } from './Systems.tsx';

type System = Item<'listWebhookEndpoints'>;
type Delivery = Item<'listWebhookDeliveries'>;

const deliveryWords: Record<Delivery['state'], string> = {
  waiting: 'Waits',
  sending: 'Being sent',
  delivered: 'Delivered',
  failed: 'Given up',
  dropped: 'Not sent: no longer shared with you',
};

/** One system that is told, and what became of each message. */
export default function SystemPage({ id }: { id: string }) {
  const systems = useWholeList('listWebhookEndpoints', {});
  const system = systems.data?.find((one) => one.id === id);
  if (system) return <Told system={system} />;
  if (systems.error) return <ErrorNotice error={systems.error} />;
  if (!systems.data) return <Loading what="the system" />;
  return (
    <Page title="No such system" over="Other systems">
      <p>
        It was removed, or is not yours. <Link href="/systems">To your systems</Link>
      </p>
    </Page>
  );
}

function Told({ system }: { system: System }) {
  const params = { id: system.id };
  const [, go] = useLocation();
  const [secret, setSecret] = useState<string>();
  const [removing, setRemoving] = useState(false);
  const touches = ['listWebhookEndpoints', 'listWebhookDeliveries'] as const;
  const started = system.state === 'active';
  const move = useAction({
    run: () => call('updateWebhookEndpoint', { params, body: { state: started ? 'paused' : 'active' } }),
    done: started ? 'Paused. What happens meanwhile waits.' : 'Started. What waited is being sent.',
    touches,
  });
  const attempt = useAction({
    run: () => call('tryWebhookEndpoint', { params }),
    done: 'A trial message is on its way.',
    touches,
  });
  const rotate = useAction({
    run: () => call('rotateWebhookSecret', { params }),
    touches,
    onDone: (made) => setSecret(made.secret),
  });
  const remove = useAction({
    run: () => call('deleteWebhookEndpoint', { params }),
    done: 'The system is told nothing more.',
    touches,
    onDone: () => go('/systems'),
  });
  return (
    <Page title={system.label} over="Other systems" under={system.url}>
      <div className="stack-wide">
        <p className="measure">
          {stateWords[system.state]}
          {system.failingSince ? `. Failing since ${formatInstant(system.failingSince)}` : ''}. Told of:{' '}
          {system.kinds.map(wordsOf).join('; ')}.{system.problem ? ` Last time: ${system.problem}` : ''}
          {system.oldSecretUntil
            ? ` The secret before this one signs too until ${formatInstant(system.oldSecretUntil)}.`
            : ''}
        </p>
        <ErrorNotice error={move.error ?? attempt.error ?? rotate.error} />
        {secret ? <NewSecret secret={secret} onDone={() => setSecret(undefined)} /> : null}
        <div className="row">
          <Button kind="main" busy={attempt.busy} onClick={() => attempt.run(undefined)}>
            Send a trial message
          </Button>
          <Button busy={move.busy} onClick={() => move.run(undefined)}>
            {started ? 'Pause' : 'Start again'}
          </Button>
          <Button busy={rotate.busy} onClick={() => rotate.run(undefined)}>
            New secret
          </Button>
          <Button onClick={() => setRemoving(true)}>Remove</Button>
        </div>
        <Replay id={system.id} />
        <Deliveries id={system.id} />
      </div>
      {removing ? (
        <ConfirmDialog
          title={`Remove ${system.label}?`}
          confirmLabel="Remove"
          busy={remove.busy}
          onConfirm={() => remove.run(undefined)}
          onClose={() => setRemoving(false)}
        >
          <p>It is told nothing more, and the list of what it was sent goes too.</p>
          <ErrorNotice error={remove.error} />
        </ConfirmDialog>
      ) : null}
    </Page>
  );
}

/** Sends again everything from a day on. */
function Replay({ id }: { id: string }) {
  const [since, setSince] = useState(today());
  const replay = useAction({
    run: () => {
      const from = new Date(`${since}T00:00:00`).toISOString();
      const body = { since: from, until: new Date().toISOString() };
      return call('replayWebhookDeliveries', { params: { id }, body });
    },
    done: (answer) => `${count(answer.count, 'message is', 'messages are')} sent again.`,
    touches: ['listWebhookDeliveries'],
  });
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        replay.run(undefined);
      }}
    >
      <h2>Send again</h2>
      <TextField
        label="Everything since"
        hint="Each message keeps its id, by which your system knows those it has."
        type="date"
        short
        required
        value={since}
        onChange={setSince}
      />
      <ErrorNotice error={replay.error} />
      <Button type="submit" busy={replay.busy}>
        Send again
      </Button>
    </form>
  );
}

function Deliveries({ id }: { id: string }) {
  const list = useList('listWebhookDeliveries', { params: { id } });
  const again = useAction({
    run: (delivery: Delivery) => call('replayWebhookDelivery', { params: { id: delivery.id } }),
    done: 'It is sent again.',
    touches: ['listWebhookDeliveries'],
  });
  return (
    <section className="stack">
      <h2>Messages</h2>
      <ErrorNotice error={again.error} />
      <MoreList list={list} what="the messages" empty={<p className="soft">Nothing was sent yet.</p>}>
        {(deliveries) => (
          <Table
            caption="The newest first"
            rows={deliveries}
            rowKey={(delivery) => delivery.id}
            columns={[
              { key: 'what', heading: 'What', cell: (delivery) => wordsOf(delivery.kind) },
              { key: 'when', heading: 'Since', cell: (delivery) => formatInstant(delivery.createdAt) },
              { key: 'state', heading: 'What became of it', cell: becameOf },
              {
                key: 'again',
                heading: 'Action',
                cell: (delivery) => (
                  <Button
                    kind="quiet"
                    aria-label={`Send again: ${wordsOf(delivery.kind)}, ${formatInstant(delivery.createdAt)}`}
                    onClick={() => again.run(delivery)}
                  >
                    Send again
                  </Button>
                ),
              },
            ]}
          />
        )}
      </MoreList>
    </section>
  );
}

function becameOf(delivery: Delivery) {
  const next = delivery.attempts > 0 && delivery.nextAttemptAt;
  return (
    <>
      {deliveryWords[delivery.state]}
      {delivery.deliveredAt && delivery.state === 'delivered'
        ? `, ${formatInstant(delivery.deliveredAt)}`
        : ''}
      {delivery.problem && delivery.state !== 'delivered' ? <small> {delivery.problem}</small> : null}
      {next ? <small> Tried again after {formatInstant(next)}.</small> : null}
    </>
  );
}
