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
      <Entered inputs={result.inputs.filter((input) => !input.table)} />
      <Found outputs={Object.entries(result.outputs)} />
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
        <b>Cautions. </b>
        {result.cautions.join(' ')}
      </p>
      <p className="worksheet-notes" dir="auto">
        <b>Sources. </b>
        {result.sources.map(sourceWords).join('; ')}. <b>Applies to. </b>
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

type Result = SnapshotWorksheet['result'];

/** What was entered, run on in one paragraph: it is read once, to check it. */
function Entered({ inputs }: { inputs: Result['inputs'] }) {
  if (inputs.length === 0) return null;
  return (
    <p className="entered">
      <b>Entered. </b>
      {inputs.map(({ key, label, text }, index) => (
        <span key={key}>
          {index > 0 && '; '}
          <span className="what">{label}</span> <bdi>{text}</bdi>
        </span>
      ))}
      .
    </p>
  );
}

/** What was found, in two columns of names and values. */
function Found({ outputs }: { outputs: [string, Result['outputs'][string]][] }) {
  if (outputs.length === 0) return null;
  return (
    <dl className="found">
      {outputs.map(([key, { label, text }]) => (
        <div key={key}>
          <dt>{label}</dt>
          <dd dir="auto">{text}</dd>
        </div>
      ))}
    </dl>
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
