import type {
  SnapshotFinding,
  SnapshotWorksheet,
  SurveyReportSnapshot,
} from '@garboard/contract/report-snapshot';
import { hasOwnSection } from '../sections-apart.tsx';
import { WorksheetBlock } from './worksheet-block.tsx';

/** The worksheets that belong to a finding. */
export const measuredFor = (snapshot: SurveyReportSnapshot, finding: SnapshotFinding): SnapshotWorksheet[] =>
  snapshot.worksheets.filter((worksheet) => worksheet.findingId === finding.id);

/** The worksheets that belong to no finding shown: what was measured and found to be well, for the most part. */
export function measuredApart(snapshot: SurveyReportSnapshot): SnapshotWorksheet[] {
  const shown = new Set(snapshot.findings.map((finding) => finding.id));
  return snapshot.worksheets.filter(
    (worksheet) =>
      (worksheet.findingId === null || !shown.has(worksheet.findingId)) && !hasOwnSection(worksheet),
  );
}

/** Measurements apart from any finding, so that what was tested and passed is on record too. */
export function Measurements({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const worksheets = measuredApart(snapshot);
  if (worksheets.length === 0) return null;
  return (
    <section id="measurements">
      <h2>Other measurements</h2>
      {worksheets.map((worksheet) => (
        <WorksheetBlock key={worksheet.id} worksheet={worksheet} level={3} />
      ))}
    </section>
  );
}
