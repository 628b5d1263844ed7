import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { surveyorsStatement } from '@garboard/trade/report-words';
import { listed, revisionWords, writtenDay, writtenDayOf } from './format.ts';
import { hasValue } from './sections-apart.tsx';

/** The surveyor's statement about the report, with room to sign. */
export function Statement({ snapshot }: { snapshot: ReportSnapshot }) {
  const { vessel, survey } = snapshot;
  const days = [...new Set(snapshot.attendances.map((a) => writtenDay(a.date)))];
  return (
    <section id="statement" className="keep">
      <h2>Surveyor’s statement</h2>
      {surveyorsStatement({
        vessel: vessel.name,
        days: listed(days),
        about: `survey ${survey.number} ${revisionWords(snapshot)} of ${writtenDayOf(snapshot.frozenAt, snapshot.timeZone)}`,
        withValue: 'worksheets' in snapshot && hasValue(snapshot),
      }).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
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
        <b>{surveyor.name}</b>
        {surveyor.qualifications && <span>{surveyor.qualifications}</span>}
        <span>{firm.name}</span>
      </p>
    </div>
  );
}
