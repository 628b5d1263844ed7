import { Button } from '../../ui/Button.tsx';
import { count, formatBytes } from '../../ui/format.ts';
import { ProgressBar } from '../../ui/ProgressBar.tsx';
import type { UploadRow } from './uploads.ts';

/** How far the upload has come as a whole, the files still moving, and those refused with the reason. */
export function UploadList({
  rows,
  busy,
  onRetry,
  onClear,
}: {
  rows: readonly UploadRow[];
  busy: boolean;
  onRetry: () => void;
  onClear: () => void;
}) {
  if (!rows.length) return null;
  const bytes = rows.reduce((sum, row) => sum + row.file.size, 0);
  const sent = rows.reduce((sum, row) => sum + row.file.size * (row.state === 'refused' ? 1 : row.share), 0);
  const sending = rows.filter((row) => row.state === 'sending' && row.share < 1);
  const arrived = rows.filter((row) => row.state === 'sending' && row.share >= 1).length;
  const waiting = rows.filter((row) => row.state === 'waiting').length;
  const stored = rows.filter((row) => row.state === 'stored').length;
  const refused = rows.filter((row) => row.state === 'refused');
  const interrupted = rows.filter((row) => row.state === 'interrupted');
  return (
    <section className="stack" aria-label="Upload">
      {busy ? (
        <ProgressBar
          label={`${stored} of ${count(rows.length, 'photo')} stored, ${formatBytes(bytes)} in all,`}
          value={bytes ? sent / bytes : 0}
        />
      ) : (
        <p>{count(stored, 'photo')} stored.</p>
      )}
      {sending.map((row) => (
        <ProgressBar
          key={row.key}
          label={`${row.file.name}, ${formatBytes(row.file.size)},`}
          value={row.share}
        />
      ))}
      {arrived ? <p className="soft">{count(arrived, 'photo')} sent, being looked at.</p> : null}
      {waiting ? <p className="soft">{count(waiting, 'photo')} waiting.</p> : null}
      {interrupted.length ? (
        <div className="notice notice-error">
          <p>The connection was lost; {count(interrupted.length, 'photo')} not sent.</p>
          <Button onClick={onRetry}>Send them again</Button>
        </div>
      ) : null}
      {refused.length ? (
        <div className="notice notice-error">
          <p>{count(refused.length, 'file')} refused. The others are not affected.</p>
          <ul>
            {refused.map((row) => (
              <li key={row.key}>
                <strong>{row.file.name}</strong>: {row.problem}
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      {busy ? null : (
        <Button kind="quiet" onClick={onClear}>
          Close this list
        </Button>
      )}
    </section>
  );
}
