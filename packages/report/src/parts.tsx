import { type Urgency, urgencies } from '@garboard/trade/vocabulary';
import type { ReactNode } from 'react';

/** What the components need to know besides the snapshot. */
export interface Sources {
  /** The address of a photo's file, by its id. */
  photoUrl: (photoId: string) => string;
}

/**
 * Urgency as an upright gauge of four segments filled from the bottom: four for `before-use`, one for `note`.
 * Always printed beside its words, so it is hidden from screen readers.
 */
export function Gauge({ urgency }: { urgency: Urgency }) {
  const filled = urgencies.length - urgencies.indexOf(urgency);
  return (
    <svg className={`gauge ${urgency}`} viewBox="0 0 10 30" aria-hidden="true">
      {[0, 1, 2, 3].map((segment) => (
        <rect
          key={segment}
          x="1"
          y={24 - segment * 7.5}
          width="8"
          height="5"
          className={segment < filled ? 'full' : 'empty'}
        />
      ))}
    </svg>
  );
}

/**
 * Room for the number of the page on which the element with this id lands. Only the one who prints can know it:
 * see `fillPageNumbers` in the worker.
 */
export function PageOf({ id }: { id: string }) {
  return <span className="page-of" data-page-of={id} />;
}

/** A paragraph of a text and the offset at which it starts there. */
interface PartOfText {
  at: number;
  text: string;
}

/** The paragraphs of a plain text; empty lines part them. */
export function paragraphsOf(text: string): PartOfText[] {
  return [...text.trim().matchAll(/\S[^\n]*(?:\n[^\S\n]*\S[^\n]*)*/g)].map((match) => ({
    at: match.index,
    text: match[0],
  }));
}

/** One paragraph; a single line feed in it stays a line break (`white-space: pre-line`). */
export function Paragraph({ paragraph, lead }: { paragraph: PartOfText; lead?: ReactNode }) {
  return (
    <p className="prose" dir="auto">
      {lead}
      {paragraph.text}
    </p>
  );
}

/** Plain text with its paragraphs, the first led in by a few words of ours. */
export function Prose({ text, lead }: { text: string; lead?: ReactNode }) {
  return paragraphsOf(text).map((paragraph, index) => (
    <Paragraph key={paragraph.at} paragraph={paragraph} lead={index === 0 && lead} />
  ));
}

/** Names and values in a table of two columns; rows without a value are left out. */
export function Facts({
  caption,
  rows,
}: {
  caption: string;
  rows: readonly (readonly [string, ReactNode])[];
}) {
  return (
    <table className="facts">
      <caption className="unseen">{caption}</caption>
      <tbody>
        {rows
          .filter(([, value]) => value !== null && value !== '')
          .map(([name, value]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td dir="auto">{value}</td>
            </tr>
          ))}
      </tbody>
    </table>
  );
}

/** A part of a section: its heading in the margin, its text beside it. */
export function Aside({ id, title, children }: { id?: string; title: string; children: ReactNode }) {
  return (
    <div className="beside" id={id}>
      <h3>{title}</h3>
      <div>{children}</div>
    </div>
  );
}
