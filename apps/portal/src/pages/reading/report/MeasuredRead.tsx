import type { SnapshotWorksheet, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { ResultView } from '../../worksheets/ResultView.tsx';

const valueKinds: readonly string[] = ['reconcile', 'comparable-sales', 'cost-less-depreciation'];
const trialKinds: readonly string[] = ['speed-runs', 'engine-readings', 'propeller-slip'];
const apart = ({ worksheets }: SurveyReportSnapshot) => worksheets.filter((w) => w.findingId === null);

/** Measurements of the vessel under way, of her value, and all others that belong to no finding. */
export const ofTrial = (snapshot: SurveyReportSnapshot) =>
  apart(snapshot).filter((w) => trialKinds.includes(w.result.kind));
export const ofValue = (snapshot: SurveyReportSnapshot) =>
  apart(snapshot).filter((w) => valueKinds.includes(w.result.kind));
export const measuredApart = (snapshot: SurveyReportSnapshot) =>
  apart(snapshot).filter((w) => ![...trialKinds, ...valueKinds].includes(w.result.kind));

/** Worksheets with a section of their own; nothing when there are none. */
export function MeasuredRead({
  id,
  title,
  worksheets,
}: {
  id: string;
  title: string;
  worksheets: readonly SnapshotWorksheet[];
}) {
  if (!worksheets.length) return null;
  return (
    <section id={id} className="stack">
      <h2>{title}</h2>
      {worksheets.map((worksheet) => (
        <section key={worksheet.id} className="stack">
          <h3>{worksheet.title}</h3>
          <ResultView result={worksheet.result} withInputs level={4} />
        </section>
      ))}
    </section>
  );
}
