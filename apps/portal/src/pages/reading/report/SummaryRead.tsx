import type { SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { hullKindOf } from '@garboard/trade/drawing/boat-places';
import { boatProfile, placedFindings } from '@garboard/trade/drawing/boat-profile';
import { harmLabels, harms, urgencies } from '@garboard/trade/vocabulary';
import { SvgPicture } from '../../../ui/SvgPicture.tsx';
import { Table } from '../../../ui/Table.tsx';
import { UrgencyGauge } from '../../../ui/UrgencyGauge.tsx';
import { byUrgency } from './order.ts';

const mostNamed = 6;

/** What matters first, how many of each urgency, and where on the boat. */
export function SummaryRead({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const live = snapshot.findings.filter((f) => f.state !== 'withdrawn');
  const first = byUrgency(live)
    .flatMap((group) => group.findings)
    .filter((f) => f.urgency !== 'note')
    .slice(0, mostNamed);
  const link = snapshot.kind === 'summary' ? 'index' : 'finding';
  return (
    <section id="summary" className="stack">
      <h2>Summary</h2>
      <Table
        caption="How many of each urgency"
        rows={urgencies.map((urgency) => ({ urgency, of: live.filter((f) => f.urgency === urgency) }))}
        rowKey={({ urgency }) => urgency}
        columns={[
          { key: 'urgency', heading: 'Urgency', cell: ({ urgency }) => <UrgencyGauge urgency={urgency} /> },
          { key: 'count', heading: 'Findings', cell: ({ of }) => of.length },
          {
            key: 'harm',
            heading: 'Harm they can do',
            cell: ({ of }) =>
              harms
                .filter((harm) => of.some((f) => f.harms.includes(harm)))
                .map((harm) => harmLabels[harm])
                .join(', '),
          },
        ]}
      />
      {first.length ? (
        <>
          <h3>What matters first</h3>
          <ol className="plain-list">
            {first.map((finding) => (
              <li key={finding.id}>
                <a href={`#${link}-${finding.number}`} dir="auto">
                  {finding.number}. {finding.title}
                </a>
              </li>
            ))}
          </ol>
        </>
      ) : (
        <p>
          {live.length ? 'Nothing has to be done: every finding is a note.' : 'No findings were recorded.'}
        </p>
      )}
      <Profile snapshot={snapshot} />
    </section>
  );
}

/** The boat in profile with the findings whose place is known; the same in words for those who don't see it. */
function Profile({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const { findings, coverage, inventory } = snapshot;
  const placed = placedFindings(findings);
  if (!placed.length) return null;
  const drawing = boatProfile(hullKindOf(coverage, [...findings, ...inventory]), placed);
  return (
    <figure className="report-drawing">
      <SvgPicture svg={drawing.svg} />
      <figcaption className="soft small">{drawing.title}, by their numbers.</figcaption>
    </figure>
  );
}
