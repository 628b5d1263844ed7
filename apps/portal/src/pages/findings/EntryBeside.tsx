import type { Survey } from '@garboard/contract/surveys';
import { Link } from 'wouter';
import { useAnswer } from '../../api/queries.ts';
import { SvgPicture } from '../../ui/SvgPicture.tsx';
import { UrgencyGauge } from '../../ui/UrgencyGauge.tsx';

/** What the known defect says beside the finding: cautions first, then when it is sooner or later than usual. */
export function EntryBeside({
  survey,
  entryKey,
  findingId,
}: {
  survey: Survey;
  entryKey: string;
  /** Once it is kept, worksheets can be filled in for it. */
  findingId: string | undefined;
}) {
  const entry = useAnswer('getCatalogueEntry', {
    params: { key: entryKey },
    query: { firmId: survey.firmId },
  }).data;
  if (!entry) return null;
  const { cautions, raise, lower, lookFor, diagram, worksheets } = entry;
  return (
    <aside className="drafting-beside boxed" aria-label="From the catalogue">
      <h2>{entry.title}</h2>
      {cautions.length ? (
        <section className="notice">
          <h3>Take care</h3>
          <ul className="bullets">
            {cautions.map((caution) => (
              <li key={caution} dir="auto">
                {caution}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <section>
        <h3>Usually</h3>
        <UrgencyGauge urgency={entry.urgency} withinDays={entry.withinDays} />
        {raise ? <p dir="auto">Sooner: {raise}</p> : null}
        {lower ? <p dir="auto">Later: {lower}</p> : null}
      </section>
      {lookFor ? (
        <section>
          <h3>What to look for</h3>
          <p className="text" dir="auto">
            {lookFor}
          </p>
        </section>
      ) : null}
      {diagram ? (
        <figure className="drawing">
          <SvgPicture svg={diagram.svg} />
          <figcaption className="soft small">{diagram.title}</figcaption>
        </figure>
      ) : null}
      {worksheets.length && findingId ? (
        <section>
          <h3>Worksheets that measure it</h3>
          <ul className="bullets">
            {worksheets.map(({ kind, title }) => (
              <li key={kind}>
                <Link href={`/surveys/${survey.id}/worksheets/new/${kind}?finding=${findingId}`}>
                  {title}
                </Link>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </aside>
  );
}
