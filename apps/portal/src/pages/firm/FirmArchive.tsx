import { call, pathOf } from '../../api/client.ts';
import { useAction, useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { formatBytes, formatInstant, formatInstantDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { ProgressBar } from '../../ui/ProgressBar.tsx';

/** How often an archive that is being made is asked after, in milliseconds. */
const askMs = 2_000;
const underWay = (state: string) => state === 'queued' || state === 'making';

/** Everything the firm has as one file, for its principal to keep or to take to another installation. */
export function FirmArchive({ firmId }: { firmId: string }) {
  const list = useList(
    'listFirmExports',
    { params: { id: firmId }, query: { limit: 1 } },
    { again: ([latest]) => (latest && underWay(latest.state) ? askMs : false) },
  );
  const ask = useAction({
    run: (_: undefined, idempotencyKey) =>
      call('createFirmExport', { params: { id: firmId }, idempotencyKey }),
    done: 'The archive is being made. You can leave this page meanwhile.',
    touches: ['listFirmExports'],
  });
  const latest = list.items?.[0];
  const busy = latest !== undefined && underWay(latest.state);
  return (
    <section className="stack">
      <h2>Take everything with you</h2>
      <p className="measure">
        One ZIP file with all that the firm has here: surveys, findings, original photos, evidence, issued
        documents, invoices and the whole record, with a checksum of each. Another Garboard can bring it in.
        Passwords, keys and links stay behind, and so does the private signing key: keep your P12 file.
      </p>
      <MoreList
        list={{ ...list, items: list.items?.slice(0, 1), hasMore: false }}
        what="the archive"
        empty={<p>No archive has been made yet.</p>}
      >
        {([archive]) => (archive ? <Standing of={archive} /> : null)}
      </MoreList>
      <ErrorNotice error={ask.error} />
      {list.items && !busy ? (
        <p>
          <Button onClick={() => ask.run(undefined)} busy={ask.busy} busyLabel="Asking…">
            {latest?.state === 'ready' ? 'Make a new archive' : 'Make an archive'}
          </Button>
        </p>
      ) : null}
    </section>
  );
}

type Archive = NonNullable<ReturnType<typeof useList<'listFirmExports'>>['items']>[number];

function Standing({ of: archive }: { of: Archive }) {
  const asked = `asked for by ${archive.askedBy}, ${formatInstant(archive.askedAt)}`;
  if (underWay(archive.state)) {
    const label = archive.stage || 'Waiting for its turn';
    return (
      <div className="stack measure">
        <ProgressBar label={label} value={archive.progress / 100} />
        <p className="small">The archive was {asked}. It goes on while you do other things.</p>
      </div>
    );
  }
  if (archive.state === 'failed') {
    return (
      <p className="measure signal" role="alert">
        The archive {asked}, could not be made. {archive.problem}
      </p>
    );
  }
  if (archive.state === 'removed') {
    return <p className="measure">The last archive, {asked}, has been removed from the server.</p>;
  }
  return (
    <div className="stack">
      <Facts
        facts={[
          ['Made', archive.readyAt ? formatInstant(archive.readyAt) : ''],
          ['Asked for by', archive.askedBy],
          ['Size', archive.bytes === null ? '' : formatBytes(archive.bytes)],
          [
            'SHA-256',
            <span key="sha" className="text">
              {archive.sha256?.match(/.{1,4}/g)?.join(' ')}
            </span>,
          ],
          ['Kept until', archive.keptUntil ? formatInstantDay(archive.keptUntil) : ''],
        ]}
      />
      <p>
        <a className="button button-main" href={pathOf('getFirmExportFile', { id: archive.id })} download>
          Download the archive
        </a>
      </p>
      <p className="small measure">
        It holds clients’ names and addresses. Keep it where only you can read it; each download is put on
        record.
      </p>
    </div>
  );
}
