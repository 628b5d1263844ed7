import type { SnapshotCoverage, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { type Reached, reachLabels } from '@garboard/trade/coverage';
import { systemLabels } from '@garboard/trade/vocabulary';
import { listed } from './format.ts';
import { Prose } from './parts.tsx';

/** The heading's place in the document, and whether there is anything to put under it. */
export const coverageLine = { id: 'coverage', title: 'What was reached' };
export const hasCoverage = (snapshot: SurveyReportSnapshot): boolean => snapshot.coverage.length > 0;

/** The scope actually achieved: each system, how far it was reached, why not wholly, and from where. */
export function CoverageRecord({ snapshot: { coverage } }: { snapshot: SurveyReportSnapshot }) {
  return (
    <section id={coverageLine.id} className="record-part">
      <h3>{coverageLine.title}</h3>
      <Summary coverage={coverage} />
      <table className="coverage">
        <caption className="unseen">How far each system was reached</caption>
        <thead>
          <tr>
            <th scope="col" className="system">
              System
            </th>
            <th scope="col" className="reached">
              Reached
            </th>
            <th scope="col">Why, and looked at from where</th>
          </tr>
        </thead>
        <tbody>
          {coverage.map((item) => (
            <tr key={item.system} className={item.reached}>
              <th scope="row">{systemLabels[item.system]}</th>
              <td className="reached">
                {isSeenWholly(item.reached) ? reachLabels[item.reached] : <b>{reachLabels[item.reached]}</b>}
              </td>
              <td>
                <Prose text={item.reason} />
                {item.lookedFrom && (
                  <p className="from" dir="auto">
                    Looked at from: {item.lookedFrom}
                  </p>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const isSeenWholly = (reached: Reached) => reached === 'examined' || reached === 'not-fitted';

const tails: Record<Reached, (count: number) => string> = {
  examined: (n) => `${n} ${n === 1 ? 'was' : 'were'} examined`,
  partly: (n) => `${n} in part`,
  'not-reached': (n) => `${n} ${n === 1 ? 'was' : 'were'} not reached`,
  'not-fitted': (n) => `${n} ${n === 1 ? 'is' : 'are'} not fitted`,
};

function Summary({ coverage }: { coverage: readonly SnapshotCoverage[] }) {
  const of = (reached: Reached) => coverage.filter((item) => item.reached === reached);
  const parts = (Object.keys(tails) as Reached[]).flatMap((reached) => {
    const { length } = of(reached);
    return length > 0 ? [tails[reached](length)] : [];
  });
  const unseen = of('not-reached').map((item) => systemLabels[item.system]);
  const seenInPart = of('partly').map((item) => systemLabels[item.system]);
  return (
    <>
      <p>
        {coverage.length === 1 ? 'One system was asked about' : `Of ${coverage.length} systems`}:{' '}
        {listed(parts)}.
      </p>
      {unseen.length > 0 && (
        <p className="unreached keep">
          <b>Not reached: {unseen.join('; ')}.</b> This report says nothing about{' '}
          {unseen.length === 1 ? 'its' : 'their'} condition, good or bad.
        </p>
      )}
      {seenInPart.length > 0 && (
        <p className="keep">
          <b>Examined in part: {seenInPart.join('; ')}.</b> What the table names as unseen may be defective.
        </p>
      )}
    </>
  );
}
