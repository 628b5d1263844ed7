import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import {
  beforeActing,
  howToRead,
  reportTerms,
  surveyorsStatement,
  urgencyMeanings,
} from '@garboard/trade/report-words';
import { urgencies } from '@garboard/trade/vocabulary';
import { Facts } from '../../../ui/Facts.tsx';
import { formatDay, formatInstantDay, listed } from '../../../ui/format.ts';
import { UrgencyGauge } from '../../../ui/UrgencyGauge.tsx';
import { ofValue } from './MeasuredRead.tsx';

/** What the urgencies mean, and the cautions. */
export function HowToRead() {
  return (
    <section id="reading" className="stack measure">
      <h2>How to read this report</h2>
      <p>{howToRead}</p>
      <dl className="stack">
        {urgencies.map((urgency) => (
          <div key={urgency}>
            <dt>
              <UrgencyGauge urgency={urgency} />
            </dt>
            <dd>{urgencyMeanings[urgency]}</dd>
          </div>
        ))}
      </dl>
      <h3>Before acting on it</h3>
      <ul className="bullets">
        {beforeActing.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}

/** Words of the report with a meaning of their own. */
export function WordsUsed() {
  return (
    <section id="terms" className="stack">
      <h2>Words used</h2>
      <Facts facts={reportTerms} />
    </section>
  );
}

/** What the surveyor states about the report, and who that is. */
export function Statement({ snapshot }: { snapshot: ReportSnapshot }) {
  const { vessel, survey, surveyor, firm, attendances } = snapshot;
  const day = formatInstantDay(snapshot.frozenAt, snapshot.timeZone);
  const sentences = surveyorsStatement({
    vessel: vessel.name,
    days: listed([...new Set(attendances.map((a) => formatDay(a.date)))]),
    about: `survey ${survey.number} revision ${snapshot.revision} of ${day}`,
    withValue: 'worksheets' in snapshot && ofValue(snapshot).length > 0,
  });
  return (
    <section id="statement" className="stack measure">
      <h2>Surveyor’s statement</h2>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p>
        <strong>{surveyor.name}</strong>
        {surveyor.qualifications ? `, ${surveyor.qualifications}` : ''}
        <br />
        {firm.name}
      </p>
    </section>
  );
}
