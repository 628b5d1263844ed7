import type { ReportSnapshot } from '@garboard/contract/report-snapshot';

/** The firm's name and address above a letter. */
export function Letterhead({ snapshot: { firm } }: { snapshot: ReportSnapshot }) {
  const contacts = [firm.email, firm.phone].filter((contact) => contact !== null);
  return (
    <header className="letterhead">
      <p className="firm">{firm.name}</p>
      <p>{[...firm.addressLines, ...contacts].join('  ·  ')}</p>
    </header>
  );
}
