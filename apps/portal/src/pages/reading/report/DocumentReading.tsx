import type { ReportSnapshot, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { reportKindLabels } from '@garboard/trade/vocabulary';
import { formatInstantDay } from '../../../ui/format.ts';
import { CostsRead } from './CostsRead.tsx';
import { CoverageRead } from './CoverageRead.tsx';
import { DecidedRead, LookedAgainRead } from './DecidedRead.tsx';
import { EquipmentRead } from './EquipmentRead.tsx';
import { FindingsRead } from './FindingsRead.tsx';
import { HowToRead, Statement, WordsUsed } from './FixedWords.tsx';
import { IndexRead, WorkRead } from './IndexRead.tsx';
import { MeasuredRead, measuredApart, ofTrial, ofValue } from './MeasuredRead.tsx';
import { RecordRead } from './RecordRead.tsx';
import { RevisionsRead } from './RevisionsRead.tsx';
import { SummaryRead } from './SummaryRead.tsx';

/** What a document says, section by section in the order of its PDF. */
export function DocumentReading({ reportId, snapshot }: { reportId: string; snapshot: ReportSnapshot }) {
  switch (snapshot.kind) {
    case 'full':
      return <FullReading reportId={reportId} snapshot={snapshot} />;
    case 'recommendations':
      return (
        <>
          <Rests snapshot={snapshot} />
          <HowToRead />
          <IndexRead findings={snapshot.findings} />
          <FindingsRead reportId={reportId} snapshot={snapshot} title="Recommendations" />
          <CostsRead snapshot={snapshot} />
          <Statement snapshot={snapshot} />
          <RevisionsRead snapshot={snapshot} />
        </>
      );
    case 'summary':
      return (
        <>
          <Rests snapshot={snapshot} />
          <SummaryRead snapshot={snapshot} />
          <IndexRead findings={snapshot.findings} alone />
          <CostsRead snapshot={snapshot} />
          <RevisionsRead snapshot={snapshot} />
        </>
      );
    case 're-inspection':
      return (
        <>
          <Rests snapshot={snapshot} />
          <RecordRead snapshot={snapshot} attendancesOnly />
          <LookedAgainRead reportId={reportId} snapshot={snapshot} />
          <RevisionsRead snapshot={snapshot} />
          <Statement snapshot={snapshot} />
        </>
      );
    default:
      return (
        <>
          <Rests snapshot={snapshot} />
          <DecidedRead snapshot={snapshot} />
        </>
      );
  }
}

function FullReading({ reportId, snapshot }: { reportId: string; snapshot: SurveyReportSnapshot }) {
  const sections: [id: string, title: string][] = [
    ['summary', 'Summary'],
    ['reading', 'How to read this report'],
    ['index', 'Findings by urgency'],
    ['record', 'The vessel and the survey'],
    ...(snapshot.coverage.length ? [['coverage', 'What was reached'] as [string, string]] : []),
    ...(snapshot.inventory.length ? [['equipment', 'Equipment'] as [string, string]] : []),
    ['findings', 'Findings by system'],
    ...(ofTrial(snapshot).length ? [['trial', 'Trial under way'] as [string, string]] : []),
    ...(measuredApart(snapshot).length ? [['measurements', 'Other measurements'] as [string, string]] : []),
    ['work', 'What to do, and by when'],
    ...(ofValue(snapshot).length ? [['value', 'Value'] as [string, string]] : []),
    ['terms', 'Words used'],
    ['statement', 'Surveyor’s statement'],
    ...(snapshot.revisions.length ? [['revisions', 'Revisions'] as [string, string]] : []),
  ];
  return (
    <>
      <nav aria-labelledby="contents">
        <h2 id="contents">Contents</h2>
        <ul className="report-contents">
          {sections.map(([id, title]) => (
            <li key={id}>
              <a href={`#${id}`}>{title}</a>
            </li>
          ))}
        </ul>
      </nav>
      <SummaryRead snapshot={snapshot} />
      <HowToRead />
      <IndexRead findings={snapshot.findings} />
      <RecordRead snapshot={snapshot} />
      <CoverageRead snapshot={snapshot} />
      <EquipmentRead snapshot={snapshot} />
      <FindingsRead reportId={reportId} snapshot={snapshot} title="Findings by system" />
      <MeasuredRead id="trial" title="Trial under way" worksheets={ofTrial(snapshot)} />
      <MeasuredRead id="measurements" title="Other measurements" worksheets={measuredApart(snapshot)} />
      <WorkRead findings={snapshot.findings} />
      <CostsRead snapshot={snapshot} />
      <MeasuredRead id="value" title="Value" worksheets={ofValue(snapshot)} />
      <WordsUsed />
      <Statement snapshot={snapshot} />
      <RevisionsRead snapshot={snapshot} />
    </>
  );
}

/** On which report a document that is made from one rests. */
function Rests({ snapshot }: { snapshot: ReportSnapshot }) {
  const issued = 'issuedReports' in snapshot ? snapshot.issuedReports : [];
  const { survey, timeZone } = snapshot;
  return (
    <div className="stack measure">
      <p>Prepared for {survey.requestedBy || 'whoever asked for the survey'}.</p>
      {issued.length ? (
        <>
          <p>It rests on:</p>
          <ul className="bullets">
            {issued.map((report) => (
              <li key={`${report.kind} ${report.revision}`}>
                {reportKindLabels[report.kind]}, revision {report.revision}, issued{' '}
                {formatInstantDay(report.issuedAt, timeZone)}
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </div>
  );
}
