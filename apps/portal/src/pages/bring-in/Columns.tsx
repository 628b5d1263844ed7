import { findingColumns } from '@garboard/trade/finding-columns';
import { pathOf } from '../../api/client.ts';
import { Table } from '../../ui/Table.tsx';

/** What a sheet of findings may hold, and samples to begin from. */
export function Columns({ surveyId, findings }: { surveyId: string; findings: number }) {
  return (
    <div className="stack">
      <div className="row">
        <a className="button button-plain" href={pathOf('getFindingsSample')} download>
          Download a sample sheet
        </a>
        {findings ? (
          <a className="button button-plain" href={pathOf('getFindingsSheet', { id: surveyId })} download>
            Download this survey’s findings as a sheet
          </a>
        ) : null}
      </div>
      <details>
        <summary>The columns that are understood</summary>
        <div className="stack">
          <p className="text">
            The first line of the sheet holds the headings, in any order and in capitals or not. Title, System
            and Urgency are needed, all others may be missing. Columns that are not on this list are named to
            you and, if you wish, added to the end of what was seen.
          </p>
          <Table
            caption="Headings and what belongs below them"
            rows={findingColumns}
            rowKey={({ key }) => key}
            columns={[
              { key: 'heading', heading: 'Heading', cell: ({ heading }) => heading },
              { key: 'holds', heading: 'What belongs below it', cell: ({ holds }) => `${holds}.` },
              { key: 'also', heading: 'Also understood', cell: ({ also }) => also.join(', ') },
            ]}
          />
        </div>
      </details>
    </div>
  );
}
