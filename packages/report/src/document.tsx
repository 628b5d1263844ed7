import type { ReportSnapshot, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { systemLabels, urgencyLabels } from '@garboard/trade/vocabulary';
import { Addendum } from './addendum.tsx';
import { BrokerSummary } from './broker-summary.tsx';
import { Contents, type ContentsLine } from './contents.tsx';
import { Costs, hasCosts } from './costs.tsx';
import { Cover } from './cover.tsx';
import { coverageLine, hasCoverage } from './coverage-record.tsx';
import { diagramsOf } from './diagrams.tsx';
import { equipmentLine, hasEquipment } from './equipment-record.tsx';
import { FindingBlock } from './finding-block.tsx';
import { bySystem, byUrgency, recommendations } from './findings-order.ts';
import { IndexOfFindings } from './index-of-findings.tsx';
import { Letter } from './letter.tsx';
import type { Sources } from './parts.tsx';
import { Reading } from './reading.tsx';
import { hasRevisions, Revisions, revisionsLine } from './revisions.tsx';
import { hasTrial, hasValue, Trial, trialLine, Value, valueLine } from './sections-apart.tsx';
import { Statement } from './statement.tsx';
import { SummaryPage, summaryLine } from './summary-page.tsx';
import { SurveyRecord } from './survey-record.tsx';
import { Terms } from './terms.tsx';
import { hasVerification, verificationLine } from './verification.tsx';
import { WorkList } from './work-list.tsx';
import { Measurements, measuredApart, measuredFor } from './worksheets/measurements.tsx';

type Of<S extends ReportSnapshot> = { snapshot: S } & Sources;

/** The body of the document that a snapshot's kind asks for. */
export function DocumentBody({ snapshot, ...sources }: Of<ReportSnapshot>) {
  switch (snapshot.kind) {
    case 'full':
      return <FullReport snapshot={snapshot} {...sources} />;
    case 'recommendations':
      return <Recommendations snapshot={snapshot} {...sources} />;
    case 'summary':
      return <BrokerSummary snapshot={snapshot} {...sources} />;
    case 're-inspection':
      return <Addendum snapshot={snapshot} {...sources} />;
    default:
      return <Letter snapshot={snapshot} />;
  }
}

// What must not wait comes before the record of the survey: most readers stop after the index.
function FullReport({ snapshot, photoUrl }: Of<SurveyReportSnapshot>) {
  const systems = bySystem(snapshot.findings);
  const diagrams = diagramsOf(
    systems.flatMap((group) => group.findings),
    snapshot.catalogue,
  );
  const lines: ContentsLine[] = [
    summaryLine,
    { id: 'reading', title: 'How to read this report' },
    { id: 'index', title: 'Findings by urgency' },
    {
      id: 'record',
      title: 'The vessel and the survey',
      parts: [
        { id: 'vessel', title: 'Vessel' },
        { id: 'attendances', title: 'Attendances' },
        { id: 'scope', title: 'Scope' },
        { id: 'limitations', title: 'Limitations' },
        ...(hasCoverage(snapshot) ? [coverageLine] : []),
        ...(hasEquipment(snapshot) ? [equipmentLine] : []),
      ],
    },
    {
      id: 'findings',
      title: 'Findings by system',
      parts: systems.map(({ system }) => ({ id: `system-${system}`, title: systemLabels[system] })),
    },
    ...(hasTrial(snapshot) ? [trialLine] : []),
    ...(measuredApart(snapshot).length > 0 ? [{ id: 'measurements', title: 'Other measurements' }] : []),
    { id: 'work', title: 'What to do, and by when' },
    ...(hasCosts(snapshot) ? [{ id: 'costs', title: 'What putting it right may cost' }] : []),
    ...(hasValue(snapshot) ? [valueLine] : []),
    { id: 'terms', title: 'Words used' },
    { id: 'statement', title: 'Surveyor’s statement' },
    ...(hasRevisions(snapshot) ? [revisionsLine] : []),
    ...(hasVerification(snapshot) ? [verificationLine] : []),
  ];
  return (
    <>
      <Cover snapshot={snapshot} photoUrl={photoUrl} />
      <main>
        <SummaryPage snapshot={snapshot} readOn="finding" />
        <Contents lines={lines} />
        <Reading />
        <IndexOfFindings findings={snapshot.findings} />
        <SurveyRecord snapshot={snapshot} />
        <section id="findings">
          <h2>Findings by system</h2>
          {systems.length === 0 && <p>No findings were recorded.</p>}
          {systems.map(({ system, findings }) => (
            <section key={system} id={`system-${system}`} className="group">
              <h3>{systemLabels[system]}</h3>
              {findings.map((finding) => (
                <FindingBlock
                  key={finding.id}
                  finding={finding}
                  worksheets={measuredFor(snapshot, finding)}
                  timeZone={snapshot.timeZone}
                  diagram={diagrams.get(finding.number)}
                  level={4}
                  photoUrl={photoUrl}
                />
              ))}
            </section>
          ))}
        </section>
        <Trial snapshot={snapshot} />
        <Measurements snapshot={snapshot} />
        <WorkList snapshot={snapshot} />
        <Costs snapshot={snapshot} />
        <Value snapshot={snapshot} />
        <Terms />
        <Statement snapshot={snapshot} />
        <Revisions snapshot={snapshot} />
      </main>
    </>
  );
}

function Recommendations({ snapshot, photoUrl }: Of<SurveyReportSnapshot>) {
  const findings = recommendations(snapshot.findings);
  const groups = byUrgency(findings);
  const diagrams = diagramsOf(
    groups.flatMap((group) => group.findings),
    snapshot.catalogue,
  );
  return (
    <>
      <Cover snapshot={{ ...snapshot, findings }} photoUrl={photoUrl} />
      <main>
        <Reading />
        <IndexOfFindings findings={findings} />
        {groups.map((group) => (
          <section key={group.urgency} className="group">
            <h2>{urgencyLabels[group.urgency]}</h2>
            {group.findings.map((finding) => (
              <FindingBlock
                key={finding.id}
                finding={finding}
                worksheets={measuredFor(snapshot, finding)}
                timeZone={snapshot.timeZone}
                diagram={diagrams.get(finding.number)}
                level={3}
                photoUrl={photoUrl}
              />
            ))}
          </section>
        ))}
        <Costs snapshot={{ ...snapshot, findings }} />
        <Statement snapshot={snapshot} />
        <Revisions snapshot={snapshot} />
      </main>
    </>
  );
}
