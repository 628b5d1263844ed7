import type { Worksheet } from '@garboard/contract/worksheets';
import { verdictLabels } from '@garboard/trade/vocabulary';
import { isStatus } from '../../api/problems.ts';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { ResultView } from './ResultView.tsx';
import type { useEvaluation } from './useEvaluation.ts';

/** What the worksheet says of the entries as they stand, or what it still needs. */
export function LiveResult({
  live,
  missing,
  newer,
  cautions,
}: {
  live: ReturnType<typeof useEvaluation>;
  missing: readonly string[];
  newer: Worksheet['newer'];
  cautions: readonly string[];
}) {
  return (
    <aside className="live-result" aria-label="Result" aria-busy={live.behind}>
      {newer ? (
        <p className="notice">
          This worksheet has a newer version, {newer.version}.{' '}
          {newer.differs
            ? `With the saved entries it gives another result: ${verdictLabels[newer.verdict].toLowerCase()}. Saving works it with the newer version.`
            : 'With the saved entries it gives the same result.'}
        </p>
      ) : null}
      {missing.length ? (
        <div className="stack">
          <h2>Still needed</h2>
          <ul className="bullets">
            {missing.slice(0, 12).map((label) => (
              <li key={label}>{label}</li>
            ))}
          </ul>
          {missing.length > 12 ? <p className="soft">and {missing.length - 12} more</p> : null}
          <h3>Cautions</h3>
          <ul className="bullets">
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </div>
      ) : live.result ? (
        <ResultView result={live.result} level={2} />
      ) : isStatus(live.error, 422) ? (
        <p role="status">Something entered can’t be so. It is named beside its field.</p>
      ) : (
        <ErrorNotice quiet error={live.error} />
      )}
    </aside>
  );
}
