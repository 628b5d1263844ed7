import { beforeActing, howToRead, urgencyMeanings } from '@garboard/trade/report-words';
import { urgencies, urgencyLabels } from '@garboard/trade/vocabulary';
import { Gauge } from './parts.tsx';

/** How to read the report: what the urgencies mean, and its cautions. */
export function Reading() {
  return (
    <section id="reading">
      <h2>How to read this report</h2>
      <p>{howToRead}</p>
      <table className="urgencies">
        <caption className="unseen">What each urgency means</caption>
        <tbody>
          {urgencies.map((urgency) => (
            <tr key={urgency}>
              <td className="gauge-cell">
                <Gauge urgency={urgency} />
              </td>
              <th scope="row">{urgencyLabels[urgency]}</th>
              <td>{urgencyMeanings[urgency]}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Cautions />
    </section>
  );
}

/** What the reader must keep in mind before acting on the report. */
function Cautions() {
  return (
    <div className="cautions keep">
      <h3>Before acting on it</h3>
      <ul>
        {beforeActing.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </div>
  );
}
