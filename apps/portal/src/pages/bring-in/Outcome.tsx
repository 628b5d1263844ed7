import type { SurveyImportRecord } from '@garboard/contract/imports';
import { useEffect, useRef } from 'react';
import { pathOf } from '../../api/client.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { count } from '../../ui/format.ts';
import { broughtIn } from './Preview.tsx';

/** What was brought in, what was not, and the way on. */
export function Outcome({ record, onAgain }: { record: SurveyImportRecord; onAgain: () => void }) {
  const { counts, refusedPhotos, surveyId } = record;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="stack" aria-labelledby="brought-in">
      <h2 id="brought-in" ref={heading} tabIndex={-1}>
        Brought in: {broughtIn(record)}
      </h2>
      <p className="text">
        They are drafts like any other: read them through, put them in order, then issue the report.
        {counts.there
          ? ` ${count(counts.there, 'row was a finding', 'rows were findings')} of this survey already.`
          : ''}
      </p>
      {counts.leftOut ? (
        <p className="text">
          {count(counts.leftOut, 'row was', 'rows were')} left out.{' '}
          <a href={pathOf('getImportLeftOut', { id: record.id })} download>
            Download these rows with the reasons
          </a>
          , put them right and choose that sheet here.
        </p>
      ) : null}
      {refusedPhotos.length ? (
        <div className="notice notice-error">
          <p>{count(refusedPhotos.length, 'photo was', 'photos were')} not taken</p>
          <ul>
            {refusedPhotos.map(({ name, problem }) => (
              <li key={name}>
                <strong>{name}</strong>: {problem}
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      <div className="actions">
        <ButtonLink kind="main" href={`/surveys/${surveyId}/findings`}>
          Go to the findings
        </ButtonLink>
        <ButtonLink href={`/surveys/${surveyId}/photos`}>Go to the photos</ButtonLink>
        <Button kind="quiet" onClick={onAgain}>
          Bring in another sheet
        </Button>
      </div>
    </section>
  );
}
