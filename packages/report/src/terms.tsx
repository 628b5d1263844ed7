import { reportTerms } from '@garboard/trade/report-words';

/** Words of the report with a meaning of their own. */
export function Terms() {
  return (
    <section id="terms">
      <h2>Words used</h2>
      <dl className="terms">
        {reportTerms.map(([term, meaning]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
