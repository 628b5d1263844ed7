import { type Urgency, urgencies, urgencyLabels } from '@garboard/trade/vocabulary';
import { Gauge } from './parts.tsx';

const meanings: Record<Urgency, string> = {
  'before-use':
    'The vessel should not be used until this has been put right. Nothing here should wait for another job.',
  'within-days': 'Put this right within the number of days stated, counted from the day of issue.',
  'next-layup': 'This can wait until the vessel is next hauled out or laid up, but not longer.',
  note: 'Nothing has to be done. The owner should know it, or keep an eye on it.',
};

/** How to read the report: what the urgencies mean, and its cautions. */
export function Reading() {
  return (
    <section id="reading">
      <h2>How to read this report</h2>
      <p>
        Each finding says what was seen, why it matters and what to do. Its urgency stands in the margin
        beside it, in words and as an upright gauge: the fuller the gauge, the less it can wait.
      </p>
      <table className="urgencies">
        <caption className="unseen">What each urgency means</caption>
        <tbody>
          {urgencies.map((urgency) => (
            <tr key={urgency}>
              <td className="gauge-cell">
                <Gauge urgency={urgency} />
              </td>
              <th scope="row">{urgencyLabels[urgency]}</th>
              <td>{meanings[urgency]}</td>
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
        <li>
          Gas, mains electricity, fuel, fire-fighting, structural and rigging work can kill when done badly.
          Have it done by people qualified, and where the law asks for it licensed, for that trade.
        </li>
        <li>
          Local codes, the flag state’s rules and the makers’ current instructions come before anything
          recommended here. Where they differ from this report, follow them and tell the surveyor.
        </li>
        <li>
          A finding describes what could be seen on the days of attendance. Opening up may show more; ask
          before the work is closed again.
        </li>
        <li>
          Urgencies are the surveyor’s opinion of the vessel as it was used and kept when seen. Heavier use or
          a longer wait can make a finding more urgent.
        </li>
      </ul>
    </div>
  );
}
