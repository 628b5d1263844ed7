import { PageOf } from './parts.tsx';

/** A line of the contents; parts are indented below it. */
export interface ContentsLine {
  id: string;
  title: string;
  parts?: readonly ContentsLine[];
}

/** The list of contents, with links and page numbers. */
export function Contents({ lines }: { lines: readonly ContentsLine[] }) {
  return (
    <section className="contents" id="contents">
      <h2>Contents</h2>
      <List lines={lines} />
    </section>
  );
}

function List({ lines }: { lines: readonly ContentsLine[] }) {
  return (
    <ul>
      {lines.map((line) => (
        <li key={line.id}>
          <a href={`#${line.id}`}>
            <span>{line.title}</span> <PageOf id={line.id} />
          </a>
          {line.parts && line.parts.length > 0 && <List lines={line.parts} />}
        </li>
      ))}
    </ul>
  );
}
