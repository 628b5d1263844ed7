import type { SnapshotFinding, SnapshotPhoto } from '@garboard/contract/report-snapshot';
import { findingStateLabels, harmLabels } from '@garboard/trade/vocabulary';
import { dueWords, urgencyWords, writtenDayOf } from './format.ts';
import { hasBeenDecided } from './index-of-findings.tsx';
import { Gauge, PageOf, Prose, type Sources } from './parts.tsx';

interface Props extends Sources {
  finding: SnapshotFinding;
  timeZone: string;
  /** The rank of the heading, so that the document's outline has no gaps. */
  level: 3 | 4;
}

/** One finding: its urgency in the margin, what was seen and what to do beside it, its photos below. */
export function FindingBlock({ finding, timeZone, level, photoUrl }: Props) {
  const Heading = level === 3 ? 'h3' : 'h4';
  return (
    <article className={`finding ${finding.urgency}`} id={`finding-${finding.number}`}>
      <Heading className="finding-title">
        <span className="finding-number">{finding.number}</span> <span dir="auto">{finding.title}</span>
      </Heading>
      <Margin finding={finding} />
      <div className="finding-text">
        {finding.observed && <Prose text={finding.observed} lead={<strong>What was seen. </strong>} />}
        {finding.consequence && <Prose text={finding.consequence} lead={<strong>Why it matters. </strong>} />}
        {finding.recommendation && (
          <div className="to-do">
            <Prose text={finding.recommendation} lead={<strong>What to do. </strong>} />
          </div>
        )}
        {finding.references.length > 0 && (
          <p className="references" dir="auto">
            References: {finding.references.join('; ')}
          </p>
        )}
        <Photos finding={finding} timeZone={timeZone} photoUrl={photoUrl} />
      </div>
    </article>
  );
}

function Margin({ finding }: { finding: SnapshotFinding }) {
  return (
    <div className="finding-margin">
      <div className="urgency">
        <Gauge urgency={finding.urgency} />
        <p>
          <strong>{urgencyWords(finding)}</strong>
          {finding.urgency === 'within-days' && finding.dueOn && <span>By {dueWords(finding)}</span>}
        </p>
      </div>
      {hasBeenDecided(finding) && <p>{findingStateLabels[finding.state]}</p>}
      {finding.harms.length > 0 && (
        <p>
          <span className="label">Can lead to</span>{' '}
          {finding.harms.map((harm) => harmLabels[harm]).join(', ')}
        </p>
      )}
      <p>
        <a href={`#index-${finding.number}`}>
          Index, page <PageOf id={`index-${finding.number}`} />
        </a>
      </p>
    </div>
  );
}

function Photos({ finding, timeZone, photoUrl }: Omit<Props, 'level'>) {
  const photos = finding.photos.map((photo, index) => ({
    photo,
    name: `Photo ${finding.number}.${index + 1}`,
  }));
  const rows = Array.from({ length: Math.ceil(photos.length / 2) }, (_, row) =>
    photos.slice(row * 2, row * 2 + 2),
  );
  return rows.map((row) => (
    <div className="photo-row" key={row[0]?.photo.id}>
      {row.map(({ photo, name }) => (
        <Figure key={photo.id} photo={photo} name={name} timeZone={timeZone} photoUrl={photoUrl} />
      ))}
    </div>
  ));
}

function Figure({
  photo,
  name,
  timeZone,
  photoUrl,
}: { photo: SnapshotPhoto; name: string; timeZone: string } & Sources) {
  const caption = photo.caption.trim();
  return (
    <figure className={photo.height > photo.width ? 'upright' : undefined}>
      <img
        src={photoUrl(photo.id)}
        alt={`${name}: ${caption || 'no caption'}`}
        width={photo.width}
        height={photo.height}
        fetchPriority="low"
      />
      <figcaption dir="auto">
        <strong>{name}</strong> {caption}
        {photo.takenAt && <span className="taken"> Taken {writtenDayOf(photo.takenAt, timeZone)}</span>}
      </figcaption>
    </figure>
  );
}
