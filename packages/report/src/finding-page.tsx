import type { SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { systemLabels } from '@garboard/trade/vocabulary';
import { diagramsOf } from './diagrams.tsx';
import { FindingBlock } from './finding-block.tsx';
import type { Sources } from './parts.tsx';
import { measuredFor } from './worksheets/measurements.tsx';

/** The findings of a snapshot by themselves, each under its system as in the report, without all around them. */
export function FindingPages({ snapshot, photoUrl }: { snapshot: SurveyReportSnapshot } & Sources) {
  const diagrams = diagramsOf(snapshot.findings, snapshot.catalogue);
  return (
    <main>
      {snapshot.findings.map((finding) => (
        <section key={finding.id} className="group">
          <h3>{systemLabels[finding.system]}</h3>
          <FindingBlock
            finding={finding}
            worksheets={measuredFor(snapshot, finding)}
            timeZone={snapshot.timeZone}
            diagram={diagrams.get(finding.number)}
            level={4}
            inReport={false}
            photoUrl={photoUrl}
          />
        </section>
      ))}
    </main>
  );
}
