import type { SnapshotWorksheet, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { Facts } from './parts.tsx';
import { WorksheetBlock } from './worksheets/worksheet-block.tsx';

// Kinds with a section of their own, in the order in which they are read.
const valueKinds = ['reconcile', 'comparable-sales', 'cost-less-depreciation'];
const trialKinds = ['speed-runs', 'engine-readings', 'propeller-slip'];

const ofKinds = (snapshot: SurveyReportSnapshot, kinds: readonly string[]): SnapshotWorksheet[] =>
  kinds.flatMap((kind) => snapshot.worksheets.filter((w) => w.findingId === null && w.result.kind === kind));

/** Whether a worksheet is printed in a section of its own kind rather than among other measurements. */
export const hasOwnSection = ({ findingId, result }: SnapshotWorksheet): boolean =>
  findingId === null && [...valueKinds, ...trialKinds].includes(result.kind);

export const valueLine = { id: 'value', title: 'Value' };
export const hasValue = (snapshot: SurveyReportSnapshot) => ofKinds(snapshot, valueKinds).length > 0;
export const trialLine = { id: 'trial', title: 'Trial under way' };
export const hasTrial = (snapshot: SurveyReportSnapshot) => ofKinds(snapshot, trialKinds).length > 0;

/** What was run and read under way: speeds and engine readings with their charts. */
export function Trial({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const worksheets = ofKinds(snapshot, trialKinds);
  if (worksheets.length === 0) return null;
  return (
    <section id={trialLine.id}>
      <h2>{trialLine.title}</h2>
      <p>
        Readings of one day, load, sea and fuel. They tell how she ran then, not how she will run at another
        load or after the same hours again.
      </p>
      {worksheets.map((worksheet) => (
        <WorksheetBlock key={worksheet.id} worksheet={worksheet} level={3} />
      ))}
    </section>
  );
}

/** The opinion of value, and the ways that led to it with their adjustments and spread. */
export function Value({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const worksheets = ofKinds(snapshot, valueKinds);
  const [first] = worksheets;
  if (!first) return null;
  const { outputs } = first.result;
  const rows = ['value', 'low', 'high'].flatMap((key) => {
    const output = outputs[key];
    return output && output.value !== null ? [[output.label, output.text] as const] : [];
  });
  return (
    <section id={valueLine.id}>
      <h2>{valueLine.title}</h2>
      <p>
        An opinion, at the date of the survey, of what she would bring between a willing buyer and a willing
        seller who both know what this report says; not a promise of price. The work recommended in this
        report is taken into account only where the working says so.
      </p>
      {rows.length > 0 && <Facts caption="The opinion of value" rows={rows} />}
      {worksheets.map((worksheet) => (
        <WorksheetBlock key={worksheet.id} worksheet={worksheet} level={3} />
      ))}
    </section>
  );
}
