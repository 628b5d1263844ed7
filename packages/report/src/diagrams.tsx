import type { SnapshotFinding, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { Drawn } from './drawn.tsx';
import { PageOf } from './parts.tsx';

type Diagram = NonNullable<SurveyReportSnapshot['catalogue'][string]['diagram']>;

/** A finding's drawing of the known defect: printed beside it, or beside an earlier one that has the same. */
export type FindingDiagram = { diagram: Diagram; printedAt: number };

/** The drawing of each finding, by its number. @param findings in the order in which they are printed */
export function diagramsOf(
  findings: readonly SnapshotFinding[],
  catalogue: SurveyReportSnapshot['catalogue'],
): Map<number, FindingDiagram> {
  const printed = new Map<string, number>();
  const all = new Map<number, FindingDiagram>();
  for (const { number, catalogueKey } of findings) {
    const diagram = catalogueKey === null ? null : catalogue[catalogueKey]?.diagram;
    if (!diagram) continue;
    const printedAt = printed.get(diagram.title) ?? number;
    printed.set(diagram.title, printedAt);
    all.set(number, { diagram, printedAt });
  }
  return all;
}

/** The drawing, or where it stands. */
export function DiagramFigure({ number, of }: { number: number; of: FindingDiagram | undefined }) {
  if (!of) return null;
  const { diagram, printedAt } = of;
  if (printedAt !== number) {
    return (
      <p className="references">
        Drawing: see{' '}
        <a href={`#diagram-${printedAt}`}>
          finding {printedAt}, page&nbsp;
          <PageOf id={`diagram-${printedAt}`} />
        </a>
        .
      </p>
    );
  }
  return (
    <div className="diagram" id={`diagram-${number}`}>
      <Drawn drawing={diagram} />
      <p className="photo-caption">
        <b>Drawing</b> {diagram.title}. A drawing of the matter, not of this boat.
      </p>
    </div>
  );
}
