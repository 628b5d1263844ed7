import type { SnapshotFinding, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { costBasisLabels, writtenCost } from '@garboard/trade/costs';
import { findingStateLabels, harmLabels, systemLabels } from '@garboard/trade/vocabulary';
import { httpLink, listed } from '../../../ui/format.ts';
import { SvgPicture } from '../../../ui/SvgPicture.tsx';
import { UrgencyGauge } from '../../../ui/UrgencyGauge.tsx';
import { ResultView } from '../../worksheets/ResultView.tsx';
import { bySystem, dueWords, recommendations } from './order.ts';
import { PhotosRead } from './PhotosRead.tsx';

/** Findings in full under their systems; of recommendations alone those that ask for work. */
export function FindingsRead({
  reportId,
  snapshot,
  title,
}: {
  reportId: string;
  snapshot: SurveyReportSnapshot;
  title: string;
}) {
  const findings =
    snapshot.kind === 'recommendations' ? recommendations(snapshot.findings) : snapshot.findings;
  return (
    <section id="findings" className="stack">
      <h2>{title}</h2>
      {findings.length ? null : <p>No findings were recorded.</p>}
      {bySystem(findings).map((group) => (
        <section key={group.system} className="stack">
          <h3>{systemLabels[group.system]}</h3>
          {group.findings.map((finding) => (
            <FindingRead key={finding.id} reportId={reportId} snapshot={snapshot} finding={finding} />
          ))}
        </section>
      ))}
    </section>
  );
}

function FindingRead({
  reportId,
  snapshot,
  finding,
}: {
  reportId: string;
  snapshot: SurveyReportSnapshot;
  finding: SnapshotFinding;
}) {
  const { cost, catalogueKey } = finding;
  const diagram = catalogueKey ? snapshot.catalogue[catalogueKey]?.diagram : null;
  const due = finding.urgency === 'within-days' ? `, by ${dueWords(finding)}` : '';
  return (
    <article className="report-finding stack" id={`finding-${finding.number}`}>
      <h4 dir="auto">
        {finding.number}. {finding.title}
      </h4>
      <p>
        <UrgencyGauge urgency={finding.urgency} withinDays={finding.withinDays} />
        {due}
        {finding.state === 'open' ? '' : `. ${findingStateLabels[finding.state]}`}
      </p>
      {finding.harms.length ? (
        <p className="soft">Harm it can do: {listed(finding.harms.map((harm) => harmLabels[harm]))}.</p>
      ) : null}
      <Passage lead="What was seen." text={finding.observed} />
      <Passage lead="Why it matters." text={finding.consequence} />
      <Passage lead="What to do." text={finding.recommendation} />
      {cost ? (
        <p>
          <strong>Cost to put right:</strong> {writtenCost(cost)} ({costBasisLabels[cost.basis].toLowerCase()}
          ). {cost.note}
        </p>
      ) : null}
      {finding.references.length ? (
        <p>
          References:{' '}
          {finding.references.map((reference, at) => (
            <span key={reference}>
              {at ? '; ' : ''}
              <Reference reference={reference} />
            </span>
          ))}
        </p>
      ) : null}
      <PhotosRead
        reportId={reportId}
        number={finding.number}
        photos={finding.photos}
        timeZone={snapshot.timeZone}
      />
      {diagram ? (
        <figure className="report-drawing">
          <SvgPicture svg={diagram.svg} />
          <figcaption className="soft small">
            {diagram.title}. A drawing of the matter, not of this boat.
          </figcaption>
        </figure>
      ) : null}
      {snapshot.worksheets
        .filter((worksheet) => worksheet.findingId === finding.id)
        .map((worksheet) => (
          <section key={worksheet.id} className="stack">
            <h5>{worksheet.title}</h5>
            <ResultView result={worksheet.result} withInputs level={6} />
          </section>
        ))}
      <p className="small">
        <a href={`#index-${finding.number}`}>Back to the findings by urgency</a>
      </p>
    </article>
  );
}

function Reference({ reference }: { reference: string }) {
  const address = httpLink(reference);
  if (!address) return <>{reference}</>;
  return (
    <a href={address} rel="noreferrer nofollow" target="_blank">
      {reference}
    </a>
  );
}

function Passage({ lead, text }: { lead: string; text: string }) {
  if (!text) return null;
  return (
    <p className="text" dir="auto">
      <strong>{lead}</strong> {text}
    </p>
  );
}
