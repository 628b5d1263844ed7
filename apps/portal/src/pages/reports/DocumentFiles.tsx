import type { Report } from '@garboard/contract/reports';
import { pathOf } from '../../api/client.ts';

/** What can be kept of an issued document: the signed PDF, and what it says as data. A draft is looked at only. */
export function DocumentFiles({ report, name }: { report: Report; name: string }) {
  const params = { id: report.id };
  if (report.state === 'ready') {
    return (
      <a href={pathOf('getReportPdf', params)} target="_blank" rel="noreferrer">
        Look at it (PDF)
      </a>
    );
  }
  if (report.state !== 'issued') return null;
  return (
    <ul className="plain-list">
      <li>
        <a href={pathOf('getReportPdf', params)} aria-label={`Download PDF: ${name}`} download>
          Download PDF
        </a>
      </li>
      <li>
        <a href={pathOf('getReportCsv', params)} aria-label={`Findings (CSV): ${name}`} download>
          Findings (CSV)
        </a>
      </li>
      <li>
        <a
          href={pathOf('getReportData', params)}
          aria-label={`Data (JSON): ${name}`}
          download={`${name.replace(/[^\w, -]/g, '-')}.json`}
        >
          Data (JSON)
        </a>
      </li>
      {report.verificationCode ? (
        <li>
          <a href={`/verify/${report.verificationCode}`} aria-label={`Verify: ${name}`}>
            Verify
          </a>
        </li>
      ) : null}
    </ul>
  );
}
