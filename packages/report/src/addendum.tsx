import type {
  AddendumSnapshot,
  SnapshotFinding,
  SnapshotLookedAgain,
} from '@garboard/contract/report-snapshot';
import { outcomeLabels } from '@garboard/trade/re-inspection';
import { findingStateLabels } from '@garboard/trade/vocabulary';
import { Attendances } from './attendances.tsx';
import { byNumber } from './findings-order.ts';
import { counted, listed, urgencyWords, writtenDay } from './format.ts';
import { limitWords } from './items.tsx';
import { RestsOn } from './letter.tsx';
import { Decision } from './letter-clearance.tsx';
import { Letterhead } from './letterhead.tsx';
import { Gauge, Prose, type Sources } from './parts.tsx';
import { type PlacedPhoto, pairedPhotos, photoRows } from './photo-layout.ts';
import { Figure } from './photos.tsx';
import { Revisions } from './revisions.tsx';
import { Statement } from './statement.tsx';

/** The addendum after a re-inspection: which findings were looked at again, what was found, what was decided. */
export function Addendum({ snapshot, photoUrl }: { snapshot: AddendumSnapshot } & Sources) {
  const { survey, vessel, findings } = snapshot;
  const seenOf = (finding: SnapshotFinding) =>
    snapshot.lookedAgain.filter((again) => again.findingId === finding.id);
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
        {snapshot.visit && <Visit visit={snapshot.visit} />}
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
            seen={seenOf(finding)}
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
          <th scope="col" className="stands">
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
            <td className="stands">{findingStateLabels[finding.state]}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface AgainProps extends Sources {
  finding: SnapshotFinding;
  seen: readonly SnapshotLookedAgain[];
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
        {seen.map((again) => (
          <Seen key={`${again.outcome} ${again.items.join()}`} seen={again} />
        ))}
        <Decision finding={finding} timeZone={timeZone} />
        <SeenPhotos number={finding.number} seen={seen} timeZone={timeZone} photoUrl={photoUrl} />
      </div>
    </article>
  );
}

/** What the surveyor noted on the visit as a whole. */
function Visit({ visit }: { visit: NonNullable<AddendumSnapshot['visit']> }) {
  return (
    <>
      <p dir="auto">
        The findings below were looked at again by {visit.by} at {visit.place} on {writtenDay(visit.date)}.
      </p>
      {visit.note && <Prose text={visit.note} />}
    </>
  );
}

/** What was seen of a finding or of some of its items. */
function Seen({
  seen: { outcome, items, found, limit, limitUntil, pairs, photos },
}: {
  seen: SnapshotLookedAgain;
}) {
  if (outcome === null) {
    const shown = pairs.length > 0 ? 'As the photos show.' : 'Decided on the evidence sent.';
    return <Prose text={found || shown} lead={<b>Found now. </b>} />;
  }
  const what = items.length > 0 ? `${listed(items.map((item) => `“${item}”`))}: ` : '';
  const within = limit === null ? '' : `, ${limitWords(limit, limitUntil)}`;
  const words = outcome === 'as-it-is' ? `may stay as it is${within}` : outcomeLabels[outcome].toLowerCase();
  const shown = !found && pairs.length + photos.length > 0 ? ', as the photos show' : '';
  return (
    <>
      <p dir="auto">
        <b>Found now. </b>
        {what}
        {what ? words : `${words.charAt(0).toUpperCase()}${words.slice(1)}`}
        {shown}.
      </p>
      {found && <Prose text={found} />}
    </>
  );
}

interface SeenPhotosProps extends Sources {
  number: number;
  seen: readonly SnapshotLookedAgain[];
  timeZone: string;
}

/** Photos of the report beside the later ones of the same, then those that answer none. */
function SeenPhotos({ number, seen, timeZone, photoUrl }: SeenPhotosProps) {
  const pairs = seen.flatMap((again) => again.pairs);
  const others = seen.flatMap((again) => again.photos);
  const names = new Map(others.map(({ id }, index) => [id, `Photo ${number}.${pairs.length + index + 1}`]));
  const figure = (placed: PlacedPhoto, name: string) => (
    <Figure key={placed.photo.id} placed={placed} name={name} timeZone={timeZone} photoUrl={photoUrl} />
  );
  return (
    <>
      {pairs.map((pair, index) => (
        <div className="photo-row pair" key={pair.after.id}>
          {pairedPhotos(pair.before, pair.after).map((placed, side) =>
            figure(placed, `${side === 0 ? 'Before' : 'After'} ${number}.${index + 1}`),
          )}
        </div>
      ))}
      {photoRows(others).map((row) => (
        <div className="photo-row" key={row[0]?.photo.id}>
          {row.map((placed) => figure(placed, names.get(placed.photo.id) ?? ''))}
        </div>
      ))}
    </>
  );
}
