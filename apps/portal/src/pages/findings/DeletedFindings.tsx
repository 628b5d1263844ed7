import type { Survey } from '@garboard/contract/surveys';
import { useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { formatDay, formatInstant } from '../../ui/format.ts';
import { Table } from '../../ui/Table.tsx';
import { useRestoreFinding } from './useDeleteFinding.ts';

/** Findings deleted of late, each with the way back. */
export function DeletedFindings({ survey, writable }: { survey: Survey; writable: boolean }) {
  const deleted = useList('listDeletedFindings', { params: { id: survey.id } });
  const restore = useRestoreFinding();
  const all = deleted.items ?? [];
  if (!all.length) return null;
  return (
    <details>
      <summary>Deleted of late, {deleted.hasMore ? `more than ${all.length}` : all.length}</summary>
      <ErrorNotice error={restore.error} />
      <Table
        caption="They go for good on the day named"
        rows={all}
        rowKey={(finding) => finding.id}
        columns={[
          { key: 'title', heading: 'Finding', cell: ({ title }) => <span dir="auto">{title}</span> },
          {
            key: 'deleted',
            heading: 'Deleted',
            cell: (f) => `${formatInstant(f.deletedAt, survey.timeZone)} by ${f.deletedBy}`,
          },
          { key: 'gone', heading: 'Gone on', cell: ({ removedOn }) => formatDay(removedOn) },
          ...(writable
            ? [
                {
                  key: 'back',
                  heading: 'Way back',
                  cell: ({ id, title }: { id: string; title: string }) => (
                    <Button kind="quiet" aria-label={`Bring back: ${title}`} onClick={() => restore.run(id)}>
                      Bring back
                    </Button>
                  ),
                },
              ]
            : []),
        ]}
      />
      {deleted.hasMore ? <Button onClick={deleted.more}>Show more</Button> : null}
    </details>
  );
}
