import type { ReportSnapshot, SnapshotChanges } from '@garboard/contract/report-snapshot';
import { writtenDayOf } from './format.ts';

/** The heading's place in the document, and whether there is anything to put under it. */
export const revisionsLine = { id: 'revisions', title: 'Revisions' };
export const hasRevisions = ({ revisions, changes }: ReportSnapshot): boolean =>
  revisions.length > 0 || changes !== null;

/** Every revision of the document so far, and what this one changes. */
export function Revisions({ snapshot }: { snapshot: ReportSnapshot }) {
  if (!hasRevisions(snapshot)) return null;
  const { revisions, changes, timeZone } = snapshot;
  return (
    <section id={revisionsLine.id}>
      <h2>{revisionsLine.title}</h2>
      {revisions.length > 0 && (
        <table className="revisions">
          <caption className="unseen">Revisions of this document</caption>
          <thead>
            <tr>
              <th scope="col" className="number">
                No.
              </th>
              <th scope="col" className="issued">
                Issued
              </th>
              <th scope="col">SHA-256 of the file</th>
            </tr>
          </thead>
          <tbody>
            {revisions.map(({ revision, issuedAt, sha256 }) => (
              <tr key={revision}>
                <th scope="row">{revision}</th>
                <td>{writtenDayOf(issuedAt, timeZone)}</td>
                <td>{sha256 ? <span className="fingerprint">{sha256}</span> : 'This document'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {changes && <Changes changes={changes} />}
    </section>
  );
}

function Changes({ changes }: { changes: SnapshotChanges }) {
  const { against, added, changed, withdrawn, record } = changes;
  const rows = [
    ...added.map((f) => ({ ...f, how: 'Added' })),
    ...changed.map((f) => ({ ...f, how: f.what.length > 0 ? `Changed: ${f.what.join(', ')}` : 'Changed' })),
    ...withdrawn.map((f) => ({ ...f, how: f.reason ? `Withdrawn: ${f.reason}` : 'Withdrawn' })),
  ];
  const around = record.length > 0 && <p>Also changed: {record.join(', ')}.</p>;
  if (rows.length === 0) {
    return (
      <>
        <p>No finding differs from revision {against}.</p>
        {around}
      </>
    );
  }
  const gone = new Set(withdrawn.map(({ number }) => number));
  return (
    <>
      <h3>What differs from revision {against}</h3>
      <table className="changes">
        <caption className="unseen">Findings that differ from revision {against}</caption>
        <thead>
          <tr>
            <th scope="col" className="number">
              No.
            </th>
            <th scope="col">Finding</th>
            <th scope="col" className="how">
              What became of it
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ number, title, how }) => (
            <tr key={`${how} ${number}`}>
              <td className="number">{number}</td>
              <th scope="row" dir="auto">
                {gone.has(number) ? title : <a href={`#finding-${number}`}>{title}</a>}
              </th>
              <td className="how">{how}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {around}
    </>
  );
}
