import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { listed, revisionWords, writtenDay, writtenDayOf } from './format.ts';
import { hasValue } from './sections-apart.tsx';

/** The surveyor's statement about the report, with room to sign. */
export function Statement({ snapshot }: { snapshot: ReportSnapshot }) {
  const days = [...new Set(snapshot.attendances.map((a) => writtenDay(a.date)))];
  return (
    <section id="statement" className="keep">
      <h2>Surveyor’s statement</h2>
      <p>
        I attended {snapshot.vessel.name}
        {days.length > 0 && ` on ${listed(days)}`} and this report, survey {snapshot.survey.number}{' '}
        {revisionWords(snapshot)} of {writtenDayOf(snapshot.frozenAt, snapshot.timeZone)}, states truly what I
        saw within its scope and limitations. The opinions in it are my own.
      </p>
      <p>
        I have no interest in the vessel, its sale or its insurance, and my fee does not depend on what I
        found. The report is for the person it was prepared for and those it was released to; it describes the
        vessel’s condition when seen and is not a warranty of it.
      </p>
      {'worksheets' in snapshot && hasValue(snapshot) && (
        <p>
          The value stated is my opinion at the date of the survey. It was not set by anybody else, and
          nothing was promised for reaching it.
        </p>
      )}
      <Signature snapshot={snapshot} />
    </section>
  );
}

/** Lines for signature, place and date above the surveyor's name. */
export function Signature({ snapshot: { surveyor, firm } }: { snapshot: ReportSnapshot }) {
  return (
    <div className="signature keep">
      <p className="sign-line">Signature</p>
      <p className="sign-line">Place</p>
      <p className="sign-line">Date</p>
      <p className="signer" dir="auto">
        <strong>{surveyor.name}</strong>
        {surveyor.qualifications && <span>{surveyor.qualifications}</span>}
        <span>{firm.name}</span>
      </p>
    </div>
  );
}
