import { verdictLabels } from '@garboard/trade/vocabulary';
import type { WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { Facts } from '../../ui/Facts.tsx';
import { SvgPicture } from '../../ui/SvgPicture.tsx';

/** What a worksheet says: verdict and reasons first, then figures, drawing, working, cautions and sources. */
export function ResultView({
  result,
  withInputs = false,
  level = 3,
}: {
  result: WorksheetResult;
  withInputs?: boolean;
  /** Rank of the headings in it. */
  level?: 2 | 3 | 4 | 6;
}) {
  const Heading = `h${level}` as const;
  return (
    <div className="stack">
      <Verdict result={result} />
      {withInputs ? <Entered result={result} /> : null}
      {result.drawings.map((drawing) => (
        <figure key={drawing.key} className="drawing">
          <SvgPicture svg={drawing.svg} />
          <figcaption className="soft small">{drawing.title}</figcaption>
        </figure>
      ))}
      <Facts facts={Object.values(result.outputs).map(({ label, text }) => [label, text] as const)} />
      {result.tables.map((table) => (
        <Rows key={table.title} {...table} />
      ))}
      <section>
        <Heading>Cautions</Heading>
        <ul className="bullets">
          {result.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
      {result.working.length ? (
        <details>
          <summary>Working</summary>
          <ul className="plain-list working">
            {result.working.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      ) : null}
      <details>
        <summary>Sources, and what they cover</summary>
        <ul className="bullets">
          {result.sources.map(({ citation, standing, note }) => (
            <li key={citation}>
              {citation}
              {note ? `: ${note}` : null}
              {standing === 'memory' && !/from memory/i.test(note ?? '') ? ' (value from memory)' : null}
              {standing === 'practice' && !/common practice/i.test(`${citation}${note}`)
                ? ' (common practice, no source)'
                : null}
            </li>
          ))}
        </ul>
        <p>{result.applicability}</p>
        <p className="soft small">
          Worksheet {result.kind}, version {result.version}
        </p>
      </details>
    </div>
  );
}

/** The verdict in words, and why. */
export function Verdict({ result }: { result: Pick<WorksheetResult, 'verdict' | 'reasons'> }) {
  return (
    <div className="verdict">
      <p className={result.verdict === 'unsatisfactory' ? 'verdict-words signal' : 'verdict-words'}>
        {verdictLabels[result.verdict]}
      </p>
      {result.reasons.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
    </div>
  );
}

function Entered({ result }: { result: WorksheetResult }) {
  return (
    <details>
      <summary>What was entered</summary>
      <Facts facts={result.inputs.map(({ label, text }) => [label, text] as const)} />
      {result.inputs.map(({ key, label, table }) =>
        table ? <Rows key={key} title={label} {...table} /> : null,
      )}
    </details>
  );
}

function Rows({ title, columns, rows }: { title: string; columns: string[]; rows: string[][] }) {
  if (!rows.length) return null;
  return (
    <table className="table table-figures">
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
          <tr key={row.join(' | ')}>
            {columns.map((column, at) => (
              <td key={column} data-label={column}>
                <div>{row[at]}</div>
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
