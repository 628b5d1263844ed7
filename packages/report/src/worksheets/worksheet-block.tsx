import type { SnapshotWorksheet } from '@garboard/contract/report-snapshot';
import { verdictLabels } from '@garboard/trade/vocabulary';
import { DrawingFigure } from './drawing-figure.tsx';

interface Props {
  worksheet: SnapshotWorksheet;
  /** The rank of its heading, so that the document's outline has no gaps. */
  level: 3 | 4 | 5;
}

/** One worked worksheet: verdict, what was entered and found, its drawing, working, cautions and sources. */
export function WorksheetBlock({ worksheet, level }: Props) {
  const { result } = worksheet;
  const Heading = `h${level}` as const;
  const named = worksheet.title !== result.title;
  return (
    <section className={`worksheet ${result.verdict}`} id={`worksheet-${worksheet.id}`}>
      <div className="worksheet-start">
        <Heading className="worksheet-title">
          <span dir="auto">{worksheet.title}</span>
          <span className="verdict">{verdictLabels[result.verdict]}</span>
        </Heading>
        {named && <p className="worksheet-kind">{result.title}</p>}
        {result.reasons.map((reason) => (
          <p key={reason} className="reason" dir="auto">
            {reason}
          </p>
        ))}
      </div>
      <div className="worksheet-figures">
        <Figures
          heading="Entered"
          rows={result.inputs
            .filter((input) => !input.table)
            .map(({ key, label, text }) => [key, label, text])}
        />
        <Figures
          heading="Found"
          rows={Object.entries(result.outputs).map(([key, { label, text }]) => [key, label, text])}
        />
      </div>
      {result.inputs.flatMap(({ key, label, table }) =>
        table ? [<Rows key={key} title={label} {...table} />] : [],
      )}
      {result.drawings.map((drawing) => (
        <DrawingFigure key={drawing.key} drawing={drawing} />
      ))}
      {result.tables.map((table) => (
        <Rows key={table.title} {...table} />
      ))}
      {result.working.length > 0 && <Working lines={result.working} />}
      <p className="worksheet-notes" dir="auto">
        <strong>Cautions. </strong>
        {result.cautions.join(' ')}
      </p>
      <p className="worksheet-notes" dir="auto">
        <strong>Sources. </strong>
        {result.sources.map(sourceWords).join('; ')}. <strong>Applies to. </strong>
        {result.applicability} Worksheet {result.kind}, version {result.version}.
      </p>
    </section>
  );
}

/** A source as it is cited, with what a reader must know of its standing. */
function sourceWords({ citation, standing, note }: SnapshotWorksheet['result']['sources'][number]): string {
  const said = `${citation}${note ? ` (${note})` : ''}`;
  const needsSaying =
    (standing === 'memory' && !/from memory/i.test(said)) ||
    (standing === 'practice' && !/common practice/i.test(said));
  if (!needsSaying) return said;
  return `${said} (${standing === 'memory' ? 'value from memory' : 'common practice, no source'})`;
}

function Figures({
  heading,
  rows,
}: {
  heading: string;
  rows: readonly (readonly [string, string, string])[];
}) {
  if (rows.length === 0) return null;
  return (
    <table className="figures">
      <thead>
        <tr>
          <th scope="col" colSpan={2}>
            {heading}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([key, label, text]) => (
          <tr key={key}>
            <th scope="row">{label}</th>
            <td dir="auto">{text}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Rows({ title, columns, rows }: { title: string; columns: string[]; rows: string[][] }) {
  if (rows.length === 0) return null;
  return (
    <table className="worksheet-rows">
      <caption>{title}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.join('\u0000')}>
            {columns.map((column, at) => (
              <td key={column} dir="auto">
                {row[at]}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The working as on paper: what, then formula, numbers put in, and result. */
function Working({ lines }: { lines: string[] }) {
  return (
    <table className="working">
      <caption>Working</caption>
      <tbody>
        {lines.map((text) => {
          const at = text.indexOf(': ');
          return (
            <tr key={text}>
              <th scope="row">{at > 0 ? text.slice(0, at) : ''}</th>
              <td>{at > 0 ? text.slice(at + 2) : text}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
