import type { Paper } from '@garboard/contract/people';
import type { SnapshotPhoto, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { purposeLabels, reportKindLabels, urgencies, urgencyLabels } from '@garboard/trade/vocabulary';
import { counted, listed, writtenDay, writtenDayOf } from './format.ts';
import { Gauge, type Sources } from './parts.tsx';
import { aspect } from './photo-layout.ts';

// Millimetres. The photo shrinks further where the page has no room for it.
const textWidth = 172;
const tallestLeadPhoto = { A4: 112, Letter: 96 };

/** The lead photo's size on the cover, in millimetres. */
export function leadPhotoSize(photo: SnapshotPhoto, paper: Paper): { width: number; height: number } {
  const height = Math.min(tallestLeadPhoto[paper], textWidth / aspect(photo));
  return { width: height * aspect(photo), height };
}

/** The first page: which vessel, for whom, by whom, and at once how much must not wait. */
export function Cover({ snapshot, photoUrl }: { snapshot: SurveyReportSnapshot } & Sources) {
  const { firm, vessel, survey, surveyor, leadPhoto } = snapshot;
  const build = [vessel.builder, vessel.model, vessel.yearBuilt].filter((part) => part !== null).join(' ');
  const days = [...new Set(snapshot.attendances.map((a) => writtenDay(a.date)))];
  const issued = writtenDayOf(snapshot.frozenAt, snapshot.timeZone);
  return (
    <header className="cover">
      <div className="cover-top">
        <p className="firm">{firm.name}</p>
        <p>Survey {survey.number}</p>
      </div>
      <div className="cover-name">
        <p className="purpose">
          {purposeLabels[survey.purpose]}
          {snapshot.kind !== 'full' && `: ${reportKindLabels[snapshot.kind].toLowerCase()}`}
        </p>
        <h1 dir="auto" className={nameSize(vessel.name)}>
          {vessel.name}
        </h1>
        {build && <p dir="auto">{build}</p>}
      </div>
      {leadPhoto && (
        <img
          className="lead-photo"
          src={photoUrl(leadPhoto.id)}
          alt={leadPhoto.caption ? `${vessel.name}: ${leadPhoto.caption}` : `The vessel ${vessel.name}`}
          width={leadPhoto.width}
          height={leadPhoto.height}
          style={{ height: `${leadPhotoSize(leadPhoto, snapshot.paper).height.toFixed(2)}mm` }}
          fetchPriority="low"
        />
      )}
      <dl className="cover-facts">
        <Fact name="Prepared for" value={survey.requestedBy} />
        <Fact name="Attended" value={listed(days)} />
        <Fact name="Surveyor" value={[surveyor.name, surveyor.qualifications].filter(Boolean).join(', ')} />
        {snapshot.preview ? (
          <Fact name="Not issued" value={`Draft of ${issued}`} />
        ) : (
          <Fact name="Issued" value={`${issued}, revision ${snapshot.revision}`} />
        )}
        <Fact
          name="Firm"
          value={[
            [firm.name, ...firm.addressLines],
            [firm.email, firm.phone],
          ]
            .map((line) => line.filter(Boolean).join(', '))
            .filter(Boolean)
            .join('\n')}
        />
      </dl>
      <Tally snapshot={snapshot} />
    </header>
  );
}

/** A class that lets long names leave room for the rest of the page. */
function nameSize(name: string): string | undefined {
  if (name.length > 70) return 'longest';
  return name.length > 28 ? 'long' : undefined;
}

function Fact({ name, value }: { name: string; value: string }) {
  return value === '' ? null : (
    <div>
      <dt>{name}</dt>
      <dd className="prose" dir="auto">
        {value}
      </dd>
    </div>
  );
}

function Tally({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const live = snapshot.findings.filter((f) => f.state !== 'withdrawn');
  return (
    <ul className="tally">
      {urgencies.map((urgency) => {
        const count = live.filter((f) => f.urgency === urgency).length;
        return (
          <li key={urgency} className={count === 0 ? 'none' : undefined}>
            <Gauge urgency={urgency} />
            <span>
              <b>{counted(count, 'finding', 'findings')}</b> <span>{urgencyLabels[urgency]}</span>
            </span>
          </li>
        );
      })}
    </ul>
  );
}
