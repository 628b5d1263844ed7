import type { SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { hullKindOf } from '@garboard/trade/drawing/boat-places';
import { boatProfile, mostMarks, placedFindings } from '@garboard/trade/drawing/boat-profile';
import { type Harm, harmLabels, harms, urgencies, urgencyLabels } from '@garboard/trade/vocabulary';
import { Drawn } from './drawn.tsx';
import { byUrgency } from './findings-order.ts';
import { counted, dueWords, shortened } from './format.ts';
import { Gauge, PageOf } from './parts.tsx';

/** The heading's place in the document. */
export const summaryLine = { id: 'summary', title: 'Summary' };

/** How many findings are named on the summary's page; the index names all. */
const mostNamed = 6;

interface Props {
  snapshot: SurveyReportSnapshot;
  /** Where a finding is to be read on: in full, or in the index of a document that has no more. */
  readOn: 'finding' | 'index';
}

/** Everything on one page: what matters first, how much of which urgency and harm, and where on the boat. */
export function SummaryPage({ snapshot, readOn }: Props) {
  const live = snapshot.findings.filter((f) => f.state !== 'withdrawn');
  const first = byUrgency(live)
    .flatMap((group) => group.findings)
    .filter((f) => f.urgency !== 'note')
    .slice(0, mostNamed);
  const asking = live.filter((f) => f.urgency !== 'note').length;
  return (
    <section id={summaryLine.id} className="one-page">
      <h2>{summaryLine.title}</h2>
      {first.length === 0 ? (
        <p>
          {live.length === 0
            ? 'No findings were recorded.'
            : 'Nothing has to be done: every finding is a note for the owner.'}
        </p>
      ) : (
        <>
          <h3>What matters first</h3>
          <table className="first">
            <caption className="unseen">The most urgent findings</caption>
            <thead className="unseen-head">
              <tr>
                <th scope="col" className="number">
                  No.
                </th>
                <th scope="col">Finding</th>
                <th scope="col" className="due">
                  Put right by
                </th>
                <th scope="col" className="page">
                  Page
                </th>
              </tr>
            </thead>
            <tbody>
              {first.map((finding) => (
                <tr key={finding.id}>
                  <td className="number">
                    <Gauge urgency={finding.urgency} /> {finding.number}
                  </td>
                  <th scope="row" dir="auto">
                    <a href={`#${readOn}-${finding.number}`}>{shortened(finding.title, 62)}</a>
                  </th>
                  <td className="due">{dueWords(finding)}</td>
                  <td className="page">
                    <PageOf id={`${readOn}-${finding.number}`} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          {asking > first.length && (
            <p className="small">
              And {counted(asking - first.length, 'finding', 'findings')} more that{' '}
              {asking - first.length === 1 ? 'asks' : 'ask'} for work:{' '}
              <a href="#index">
                findings by urgency, page&nbsp;
                <PageOf id="index" />
              </a>
              .
            </p>
          )}
        </>
      )}
      {live.length > 0 && <Counts findings={live} />}
      <Profile snapshot={snapshot} />
    </section>
  );
}

type Findings = SurveyReportSnapshot['findings'];

/** How many findings of each urgency can do each kind of harm. */
function Counts({ findings }: { findings: Findings }) {
  const kinds = harms.filter((harm) => findings.some((f) => f.harms.includes(harm)));
  const count = (urgency: (typeof urgencies)[number], harm?: Harm) =>
    findings.filter((f) => f.urgency === urgency && (harm === undefined || f.harms.includes(harm))).length;
  return (
    <>
      <h3>How much, and what harm it can do</h3>
      <table className="counts">
        <caption className="unseen">Findings by urgency and by the harm they can do</caption>
        <thead>
          <tr>
            <th scope="col">Harm</th>
            {urgencies.map((urgency) => (
              <th scope="col" key={urgency}>
                {urgencyLabels[urgency]}
              </th>
            ))}
            <th scope="col">Together</th>
          </tr>
        </thead>
        <tbody>
          {kinds.map((harm) => (
            <tr key={harm}>
              <th scope="row">{harmLabels[harm]}</th>
              {urgencies.map((urgency) => (
                <td key={urgency}>{count(urgency, harm) || '–'}</td>
              ))}
              <td>{findings.filter((f) => f.harms.includes(harm)).length}</td>
            </tr>
          ))}
          <tr className="total">
            <th scope="row">All findings</th>
            {urgencies.map((urgency) => (
              <td key={urgency}>{count(urgency) || '–'}</td>
            ))}
            <td>{findings.length}</td>
          </tr>
        </tbody>
      </table>
      {kinds.length > 0 && <p className="small">A finding can do several kinds of harm.</p>}
    </>
  );
}

function Profile({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const { coverage, findings, inventory } = snapshot;
  const placed = placedFindings(findings);
  if (placed.length === 0) return null;
  const drawing = boatProfile(hullKindOf(coverage, [...findings, ...inventory]), placed);
  const live = findings.filter((f) => f.state !== 'withdrawn').length;
  const missing = live - Math.min(placed.length, mostMarks);
  return (
    <div className="profile">
      <h3>{drawing.title}</h3>
      <Drawn drawing={drawing} />
      <p className="small">
        Not to scale, and not her own lines. Filled orange: before next use; filled dark: within days; ringed:
        next haul-out or lay-up; thinly ringed: note. A broken ring around it: on the port side.
        {missing > 0 && ` ${counted(missing, 'finding is', 'findings are')} not shown by place.`}
      </p>
    </div>
  );
}
