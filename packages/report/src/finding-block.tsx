import type { SnapshotFinding, SnapshotWorksheet } from '@garboard/contract/report-snapshot';
import { findingStateLabels, harmLabels } from '@garboard/trade/vocabulary';
import { FindingCost } from './costs.tsx';
import { DiagramFigure, type FindingDiagram } from './diagrams.tsx';
import { urgencyWords, writtenDay } from './format.ts';
import { hasMovedOn } from './index-of-findings.tsx';
import { Items } from './items.tsx';
import { Gauge, PageOf, Paragraph, Prose, paragraphsOf, type Sources } from './parts.tsx';
import { Photos } from './photos.tsx';
import { WorksheetBlock } from './worksheets/worksheet-block.tsx';

interface Props extends Sources {
  finding: SnapshotFinding;
  /** What was measured for it. */
  worksheets: readonly SnapshotWorksheet[];
  timeZone: string;
  /** The drawing of the known defect it began from. */
  diagram?: FindingDiagram | undefined;
  /** The rank of the heading, so that the document's outline has no gaps. */
  level: 3 | 4;
  /** Whether there is an index to lead back to; not where one finding is looked at by itself. */
  inReport?: boolean;
}

/** One finding: its urgency in the margin, what was seen and what to do beside it, its photos below. */
export function FindingBlock({
  finding,
  worksheets,
  timeZone,
  diagram,
  level,
  inReport = true,
  photoUrl,
}: Props) {
  const Heading = level === 3 ? 'h3' : 'h4';
  // The first paragraph stays on the heading's page; the rest may go on to the next.
  const [first, ...more] = paragraphsOf(finding.observed);
  return (
    <article className={`finding ${finding.urgency}`} id={`finding-${finding.number}`}>
      <div className="finding-start">
        <Heading className="finding-title">
          <span className="finding-number">{`${finding.number} `}</span>
          <span dir="auto">{finding.title}</span>
        </Heading>
        <Margin finding={finding} inReport={inReport} />
        {first && (
          <div className="finding-text">
            <Paragraph paragraph={first} lead={<b>What was seen. </b>} />
          </div>
        )}
      </div>
      <div className="finding-text">
        {more.map((paragraph) => (
          <Paragraph key={paragraph.at} paragraph={paragraph} />
        ))}
        {finding.consequence && <Prose text={finding.consequence} lead={<b>Why it matters. </b>} />}
        {finding.recommendation && (
          <div className="to-do">
            <Prose text={finding.recommendation} lead={<b>What to do. </b>} />
            <Items items={finding.items} />
          </div>
        )}
        <FindingCost finding={finding} />
        {finding.references.length > 0 && (
          <p className="references" dir="auto">
            References: {finding.references.join('; ')}
          </p>
        )}
        <Photos finding={finding} timeZone={timeZone} photoUrl={photoUrl} />
        <DiagramFigure number={finding.number} of={diagram} />
        {worksheets.map((worksheet) => (
          <WorksheetBlock key={worksheet.id} worksheet={worksheet} level={level === 3 ? 4 : 5} />
        ))}
      </div>
    </article>
  );
}

function Margin({ finding, inReport }: { finding: SnapshotFinding; inReport: boolean }) {
  return (
    <div className="finding-margin">
      <div className="urgency">
        <Gauge urgency={finding.urgency} />
        <p>
          <b>{urgencyWords(finding)}</b>
          {(finding.urgency !== 'before-use' || finding.dueStated) && finding.dueOn && (
            <span>By {writtenDay(finding.dueOn)}</span>
          )}
        </p>
      </div>
      {hasMovedOn(finding) && <p>{findingStateLabels[finding.state]}</p>}
      {finding.harms.length > 0 && (
        <p>
          <span className="label">Harm it can do</span>{' '}
          {finding.harms.map((harm) => harmLabels[harm]).join(', ')}
        </p>
      )}
      {inReport && (
        <p>
          <a href={`#index-${finding.number}`}>
            Index, page <PageOf id={`index-${finding.number}`} />
          </a>
        </p>
      )}
    </div>
  );
}
