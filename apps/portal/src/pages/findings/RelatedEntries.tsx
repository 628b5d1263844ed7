import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { Link } from 'wouter';
import { useAnswer } from '../../api/queries.ts';

/** After a finding was saved: the defects that go with it and aren't recorded in this survey yet. */
export function RelatedEntries({
  survey,
  findings,
  after,
}: {
  survey: Survey;
  findings: readonly Finding[];
  /** The finding just saved. */
  after: string;
}) {
  const saved = findings.find((finding) => finding.id === after);
  const entry = useAnswer(
    'getCatalogueEntry',
    { params: { key: saved?.catalogueKey ?? '' }, query: { firmId: survey.firmId } },
    { enabled: Boolean(saved?.catalogueKey) },
  ).data;
  const recorded = new Set(findings.map((finding) => finding.catalogueKey));
  const related = (entry?.related ?? []).filter(({ key }) => !recorded.has(key));
  if (!saved || !related.length) return null;
  return (
    <section className="boxed" aria-label="Inspect also">
      <p>
        With “<span dir="auto">{saved.title}</span>”, inspect also. Choose one to record it:
      </p>
      <ul className="bullets">
        {related.map(({ key, title }) => (
          <li key={key}>
            <Link href={`/surveys/${survey.id}/findings/new?entry=${key}`}>{title}</Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
