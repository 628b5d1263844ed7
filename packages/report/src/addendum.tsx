import type {
  AddendumSnapshot,
  SnapshotFinding,
  SnapshotLookedAgain,
} from '@garboard/contract/report-snapshot';
import { findingStateLabels } from '@garboard/trade/vocabulary';
import { Attendances } from './attendances.tsx';
import { byNumber } from './findings-order.ts';
import { counted, urgencyWords } from './format.ts';
import { RestsOn } from './letter.tsx';
import { Decision } from './letter-clearance.tsx';
import { Letterhead } from './letterhead.tsx';
import { Gauge, Prose, type Sources } from './parts.tsx';
import { pairedPhotos } from './photo-layout.ts';
import { Figure } from './photos.tsx';
import { Revisions } from './revisions.tsx';
import { Statement } from './statement.tsx';

/** The addendum after a re-inspection: which findings were looked at again, what was found, what was decided. */
export function Addendum({ snapshot, photoUrl }: { snapshot: AddendumSnapshot } & Sources) {
  const { survey, vessel, findings } = snapshot;
  const seen = new Map(snapshot.lookedAgain.map((again) => [again.findingId, again]));
  const again = byNumber(findings);
  return (
    <main className="letter addendum">
      <Letterhead snapshot={snapshot} />
      <h1 dir="auto">Re-inspection: {vessel.name}</h1>
      <p>
        Addendum to survey {survey.number}
        {vessel.hullNumber && `, hull number ${vessel.hullNumber}`}, prepared for {survey.requestedBy}.{' '}
        {counted(again.length, 'finding was', 'findings were')} looked at again; what the report says of all
        others stands as it was.
      </p>
      <RestsOn snapshot={snapshot} />
      <section id="attendances">
        <h2>Attendances</h2>
        <Attendances snapshot={snapshot} />
      </section>
      <section id="outcome">
        <h2>Outcome</h2>
        <Outcome findings={again} />
      </section>
      <section id="again">
        <h2>What was found</h2>
        {again.map((finding) => (
          <Again
            key={finding.id}
            finding={finding}
            seen={seen.get(finding.id)}
            timeZone={snapshot.timeZone}
            photoUrl={photoUrl}
          />
        ))}
      </section>
      <Revisions snapshot={snapshot} />
      <Statement snapshot={snapshot} />
    </main>
  );
}

function Outcome({ findings }: { findings: readonly SnapshotFinding[] }) {
  return (
    <table className="work">
      <caption className="unseen">Findings looked at again and what became of them</caption>
      <thead>
        <tr>
          <th scope="col" className="number">
            No.
          </th>
          <th scope="col">Finding</th>
          <th scope="col" className="due">
            Urgency
          </th>
          <th scope="col" className="done">
            Stands now
          </th>
        </tr>
      </thead>
      <tbody>
        {findings.map((finding) => (
          <tr key={finding.id}>
            <td className="number">
              <Gauge urgency={finding.urgency} /> {finding.number}
            </td>
            <th scope="row" dir="auto">
              <a href={`#finding-${finding.number}`}>{finding.title}</a>
            </th>
            <td className="due">{urgencyWords(finding)}</td>
            <td className="done">{findingStateLabels[finding.state]}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface AgainProps extends Sources {
  finding: SnapshotFinding;
  seen: SnapshotLookedAgain | undefined;
  timeZone: string;
}

function Again({ finding, seen, timeZone, photoUrl }: AgainProps) {
  return (
    <article className="finding" id={`finding-${finding.number}`}>
      <div className="finding-start">
        <h3 className="finding-title">
          <span className="finding-number">{`${finding.number} `}</span>
          <span dir="auto">{finding.title}</span>
        </h3>
        <div className="finding-margin">
          <div className="urgency">
            <Gauge urgency={finding.urgency} />
            <p>
              <b>{urgencyWords(finding)}</b>
            </p>
          </div>
        </div>
        <div className="finding-text">
          <Prose text={finding.recommendation} lead={<b>Recommended. </b>} />
        </div>
      </div>
      <div className="finding-text">
        {seen?.found ? (
          <Prose text={seen.found} lead={<b>Found now. </b>} />
        ) : (
          <p>
            <b>Found now. </b>
            {seen && seen.pairs.length > 0 ? 'As the photos show.' : 'Decided on the evidence sent.'}
          </p>
        )}
        <Decision finding={finding} timeZone={timeZone} />
        {seen?.pairs.map((pair, index) => (
          <div className="photo-row pair" key={pair.after.id}>
            {pairedPhotos(pair.before, pair.after).map((placed, side) => (
              <Figure
                key={placed.photo.id}
                placed={placed}
                name={`${side === 0 ? 'Before' : 'After'} ${finding.number}.${index + 1}`}
                timeZone={timeZone}
                photoUrl={photoUrl}
              />
            ))}
          </div>
        ))}
      </div>
    </article>
  );
}
