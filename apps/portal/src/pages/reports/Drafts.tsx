import type { Survey } from '@garboard/contract/surveys';
import { call } from '../../api/client.ts';
import { useAction, useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { DocumentTable, whileMaking } from './DocumentTable.tsx';

/** Drafts of the report to look at before it is issued. */
export function Drafts({ survey }: { survey: Survey }) {
  const list = useList(
    'listReports',
    { params: { id: survey.id }, query: { preview: 'true' } },
    { again: whileMaking },
  );
  const making = list.items?.some((draft) => draft.state === 'queued' || draft.state === 'rendering');
  const make = useAction({
    run: (_: undefined, idempotencyKey) =>
      call('createReport', {
        params: { id: survey.id },
        body: { kind: 'full', preview: true },
        idempotencyKey,
      }),
    done: 'The draft is being made.',
    touches: ['listReports'],
  });
  return (
    <section className="stack">
      <h2>See how it will look</h2>
      <p className="measure">
        A draft shows the report as it stands, ready or not. Every page says that it is a draft; only your
        firm sees it, it issues nothing, and it is removed after a day.
      </p>
      <ErrorNotice error={make.error} />
      <div className="actions">
        <Button
          busy={make.busy || making}
          busyLabel="The draft is being made"
          onClick={() => make.run(undefined)}
        >
          Make a draft
        </Button>
      </div>
      {list.items?.length ? <DocumentTable reports={list.items} survey={survey} mayRetry /> : null}
    </section>
  );
}
