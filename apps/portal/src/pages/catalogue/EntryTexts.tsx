import type { CatalogueEntry } from '@garboard/contract/catalogue';
import { slotAsked } from '@garboard/trade/catalogue/slots';
import { harmLabels } from '@garboard/trade/vocabulary';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { listed } from '../../ui/format.ts';
import { UrgencyGauge } from '../../ui/UrgencyGauge.tsx';

export type EntryWords = Omit<CatalogueEntry, 'diagram' | 'slots' | 'may'>;

/** Everything an entry says, in the order in which a surveyor needs it. */
export function EntryTexts({ entry }: { entry: EntryWords }) {
  return (
    <div className="entry-texts">
      {entry.cautions.length ? (
        <section className="notice">
          <h2>Take care</h2>
          <ul className="bullets">
            {entry.cautions.map((caution) => (
              <li key={caution} dir="auto">
                {caution}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <Part heading="What to look for" text={entry.lookFor} />
      <Part heading="What is seen" text={entry.observed} />
      <Part heading="Why it matters" text={entry.consequence} />
      <Part heading="What to do" text={entry.recommendation} />
      <section>
        <h2>How soon</h2>
        <UrgencyGauge urgency={entry.urgency} withinDays={entry.withinDays} />
        {entry.raise ? <p dir="auto">Sooner: {entry.raise}</p> : null}
        {entry.lower ? <p dir="auto">Later: {entry.lower}</p> : null}
      </section>
      <section>
        <h2>What could come of it</h2>
        <p>{listed(entry.harms.map((harm) => harmLabels[harm]))}</p>
      </section>
      <Many heading="Standards and regulations" items={entry.references}>
        {(reference) => (
          <Link href={`/catalogue?${new URLSearchParams({ standard: reference })}`}>{reference}</Link>
        )}
      </Many>
      <Many heading="Worksheets that measure it" items={entry.worksheets.map(({ title }) => title)}>
        {(title) => title}
      </Many>
      <Many heading="Inspect also" items={entry.related.map(({ key }) => key)}>
        {(key) => (
          <Link href={`/catalogue/${key}`}>{entry.related.find((other) => other.key === key)?.title}</Link>
        )}
      </Many>
      <Many heading="Also called" items={entry.alsoCalled}>
        {(words) => words}
      </Many>
    </div>
  );
}

function Part({ heading, text }: { heading: string; text: string }) {
  if (!text) return null;
  return (
    <section>
      <h2>{heading}</h2>
      <p dir="auto">{withSlots(text)}</p>
    </section>
  );
}

/** The text with its slots told apart by a dashed line and named in words. */
function withSlots(text: string): ReactNode[] {
  return text.split(/(\{[a-z]+\})/).map((piece, at) => {
    const slot = /^\{([a-z]+)\}$/.exec(piece)?.[1];
    // Pieces keep their place: the text doesn't change while it is shown.
    const place = `${at}:${piece}`;
    return slot ? (
      <span key={place} className="slot">
        {slotAsked(slot).label.toLowerCase()}
      </span>
    ) : (
      piece
    );
  });
}

function Many({
  heading,
  items,
  children,
}: {
  heading: string;
  items: readonly string[];
  children: (item: string) => ReactNode;
}) {
  if (!items.length) return null;
  return (
    <section>
      <h2>{heading}</h2>
      <ul className="bullets">
        {items.map((item) => (
          <li key={item} dir="auto">
            {children(item)}
          </li>
        ))}
      </ul>
    </section>
  );
}
