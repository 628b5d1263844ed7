import type { Report } from '@garboard/contract/reports';
import type { Survey } from '@garboard/contract/surveys';
import { reportKindLabels, reportStateLabels } from '@garboard/trade/vocabulary';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count, formatBytes, formatInstant } from '../../ui/format.ts';
import { ProgressBar } from '../../ui/ProgressBar.tsx';
import { useStatus } from '../../ui/Status.tsx';
import { Table } from '../../ui/Table.tsx';
import { DocumentFiles } from './DocumentFiles.tsx';

const inTheMaking = (report: Report) => report.state === 'queued' || report.state === 'rendering';

/** While a document is being made, the list looks again soon. */
export const whileMaking = (reports: Report[]) => (reports.some(inTheMaking) ? 1000 : false);

/** What a document is called on the telephone: `Survey report, revision 2`. */
export function documentName(report: Pick<Report, 'kind' | 'revision' | 'preview'>): string {
  if (report.preview) return `${reportKindLabels[report.kind]}, draft`;
  return report.revision !== null && report.revision > 1
    ? `${reportKindLabels[report.kind]}, revision ${report.revision}`
    : reportKindLabels[report.kind];
}

/** Documents with their state, progress while they are being made, and the file. */
export function DocumentTable({
  reports,
  survey,
  mayRetry,
}: {
  reports: readonly Report[];
  survey: Survey;
  mayRetry: boolean;
}) {
  useSayWhenMade(reports);
  return (
    <Table
      caption="Newest first"
      rows={reports}
      rowKey={(report) => report.id}
      columns={[
        {
          key: 'name',
          heading: 'Document',
          cell: (report) =>
            report.state === 'issued' ? (
              <Link href={`/reports/${report.id}`}>{documentName(report)}</Link>
            ) : (
              documentName(report)
            ),
        },
        {
          key: 'state',
          heading: 'State',
          cell: (report) => <State report={report} mayRetry={mayRetry} />,
        },
        {
          key: 'issued',
          heading: reports.every((report) => report.preview) ? 'Asked for' : 'Issued',
          cell: (report) => {
            const at = report.preview ? report.requestedAt : report.issuedAt;
            return at && formatInstant(at, survey.timeZone);
          },
        },
        {
          key: 'size',
          heading: 'Size',
          align: 'tight',
          cell: (report) =>
            report.pages && report.bytes && `${count(report.pages, 'page')}, ${formatBytes(report.bytes)}`,
        },
        {
          key: 'file',
          heading: 'File',
          cell: (report) => <DocumentFiles report={report} name={documentName(report)} />,
        },
      ]}
    />
  );
}

function State({ report, mayRetry }: { report: Report; mayRetry: boolean }) {
  const retry = useAction({
    run: () => call('retryReport', { params: { id: report.id } }),
    done: 'Being made again.',
    touches: ['listReports'],
  });
  if (inTheMaking(report)) {
    return (
      <ProgressBar label={report.stage || reportStateLabels[report.state]} value={report.progress / 100} />
    );
  }
  if (report.state === 'failed') {
    return (
      <div className="stack">
        <p>
          <span className="signal">{reportStateLabels.failed}</span>
          {report.problem ? `: ${report.problem}` : ''}
        </p>
        {mayRetry ? (
          <Button busy={retry.busy} onClick={() => retry.run(undefined)}>
            Try again
          </Button>
        ) : null}
        <ErrorNotice error={retry.error} />
      </div>
    );
  }
  const { supersededBy, changes } = report;
  return (
    <>
      {supersededBy ? (
        <>
          Superseded by <Link href={`/reports/${supersededBy.id}`}>revision {supersededBy.revision}</Link>
        </>
      ) : (
        reportStateLabels[report.state]
      )}
      {changes ? (
        <small>
          <Link href={`/reports/${report.id}#revisions`}>{changesInShort(changes)}</Link>
        </small>
      ) : null}
    </>
  );
}

/** `1 added, 2 changed, 1 withdrawn`. */
function changesInShort({ added, changed, withdrawn, record }: NonNullable<Report['changes']>): string {
  const parts = [
    added.length ? `${added.length} added` : '',
    changed.length ? `${changed.length} changed` : '',
    withdrawn.length ? `${withdrawn.length} withdrawn` : '',
  ].filter(Boolean);
  if (parts.length) return parts.join(', ');
  return record.length ? 'The record changed, no finding' : 'Nothing changed';
}

/** Says aloud when a document that was watched in the making is there, and refreshes what that changes. */
function useSayWhenMade(reports: readonly Report[]) {
  const say = useStatus();
  const queryClient = useQueryClient();
  const making = useRef(new Set<string>());
  useEffect(() => {
    for (const report of reports) {
      if (inTheMaking(report)) making.current.add(report.id);
      else if (making.current.delete(report.id)) {
        say(
          report.state === 'failed'
            ? `${documentName(report)} could not be made.`
            : `${documentName(report)} is ${report.preview ? 'ready to look at' : 'issued'}.`,
        );
        for (const name of [
          'getSurvey',
          'listFindings',
          'listSurveys',
          'listEvents',
          'getSurveyChanges',
          'getReview',
        ]) {
          void queryClient.invalidateQueries({ queryKey: [name] });
        }
      }
    }
  }, [reports, say, queryClient]);
}
