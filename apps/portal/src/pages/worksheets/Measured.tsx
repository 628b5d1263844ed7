import type { Finding } from '@garboard/contract/findings';
import { verdictLabels } from '@garboard/trade/vocabulary';
import type { ReactNode } from 'react';
import { Link } from 'wouter';

/** The worksheets of a finding, each with its verdict. */
export function Measured({
  worksheets,
  href,
  action,
}: {
  worksheets: Finding['worksheets'];
  href: (id: string) => string;
  action?: ReactNode;
}) {
  if (!worksheets.length && !action) return null;
  return (
    <section className="stack">
      <h2>Measurements</h2>
      {worksheets.length ? (
        <ul className="plain-list">
          {worksheets.map((worksheet) => (
            <li key={worksheet.id}>
              <Link href={href(worksheet.id)}>{worksheet.title}</Link>: {verdictLabels[worksheet.verdict]}
            </li>
          ))}
        </ul>
      ) : null}
      {action}
    </section>
  );
}
