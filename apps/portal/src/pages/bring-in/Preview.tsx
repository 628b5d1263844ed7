import type { SurveyImportRecord } from '@garboard/contract/imports';
import { useEffect, useRef, useState } from 'react';
import { pathOf } from '../../api/client.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Field.tsx';
import { count, listed } from '../../ui/format.ts';
import { RowTable } from './RowTable.tsx';

export interface Choices {
  leaveOutBadRows: boolean;
  otherColumns: 'append' | 'leave-out';
}

/** What would come in, row by row, and the choices that are left to make. */
export function Preview({
  record,
  busy,
  onStart,
  onAgain,
}: {
  record: SurveyImportRecord;
  busy: boolean;
  onStart: (choices: Choices) => void;
  onAgain: () => void;
}) {
  const { counts, otherColumns, missingPhotos, problem } = record;
  const [leaveOut, setLeaveOut] = useState(false);
  const [append, setAppend] = useState(true);
  const [tried, setTried] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  // The page has changed under whoever pressed the button: here is what it changed to.
  useEffect(() => heading.current?.focus(), []);
  const nothing = counts.findings + counts.there === 0 && counts.photos === 0;
  const stuck = counts.leftOut > 0 && !leaveOut;
  return (
    <section className="stack" aria-labelledby="comes-in">
      <h2 id="comes-in" ref={heading} tabIndex={-1}>
        What comes in
      </h2>
      {problem ? (
        <div className="notice notice-error" role="alert">
          <p>It was not brought in</p>
          <p>{problem}</p>
        </div>
      ) : null}
      <p className="text">{summary(record)}</p>
      {record.remarks.map((remark) => (
        <p className="text" key={remark}>
          {remark}
        </p>
      ))}
      {missingPhotos.length ? (
        <details>
          <summary>
            {count(missingPhotos.length, 'photo is', 'photos are')} named in the sheet and not there
          </summary>
          <p className="text">{missingPhotos.join(', ')}</p>
        </details>
      ) : null}
      {counts.leftOut ? (
        <div className="notice notice-error">
          <p>{count(counts.leftOut, 'row can’t come in as it is', 'rows can’t come in as they are')}</p>
          <p>
            Put right in the sheet what is said below and choose it again, or leave such rows out now and
            bring them in later.{' '}
            <a href={pathOf('getImportLeftOut', { id: record.id })} download>
              Download these rows with the reasons
            </a>
          </p>
          <Checkbox
            label={`Leave out ${count(counts.leftOut, 'row')}`}
            checked={leaveOut}
            onChange={setLeaveOut}
          />
        </div>
      ) : null}
      {otherColumns.length ? (
        <Checkbox
          label={`Add what stands under ${listed(otherColumns.map((name) => `“${name}”`))} to the end of what was seen`}
          checked={append}
          onChange={setAppend}
        />
      ) : null}
      <RowTable rows={record.rows} />
      <p role="alert" className="field-error">
        {tried && stuck ? 'Say first what is to become of the rows that can’t come in.' : ''}
        {tried && nothing ? 'There is nothing to bring in. Choose another sheet.' : ''}
      </p>
      <div className="actions">
        <Button
          kind="main"
          busy={busy}
          busyLabel="Beginning…"
          onClick={() => {
            setTried(true);
            if (stuck || nothing) return;
            onStart({ leaveOutBadRows: leaveOut, otherColumns: append ? 'append' : 'leave-out' });
          }}
        >
          {`Bring in ${what(record)}`}
        </Button>
        <Button kind="quiet" onClick={onAgain}>
          Choose other files
        </Button>
      </div>
    </section>
  );
}

/** `58 findings and 34 photos`. */
export function what({ counts }: Pick<SurveyImportRecord, 'counts'>): string {
  const parts = [
    counts.findings || !counts.photos ? count(counts.findings, 'finding') : '',
    counts.photos ? count(counts.photos, 'photo') : '',
  ];
  return listed(parts.filter(Boolean));
}

/** The same of what was brought in: without the photos that could not be taken. */
export const broughtIn = ({ counts, refusedPhotos }: SurveyImportRecord): string =>
  what({ counts: { ...counts, photos: counts.photosDone - refusedPhotos.length } });

function summary({ counts, fileName }: SurveyImportRecord): string {
  const rows = [
    `${fileName} holds ${count(counts.rows, 'row')}: ${count(counts.findings, 'becomes a finding', 'become findings')}`,
    counts.there ? `${count(counts.there, 'is here already', 'are here already')}` : '',
    counts.leftOut ? `${counts.leftOut} can’t come in` : '',
  ];
  const photos = counts.photos
    ? ` ${count(counts.photos, 'photo')} come in with it, ${counts.photosNamed} of them named by a row.`
    : ' No photos come with it.';
  return `${rows.filter(Boolean).join(', ')}.${photos}`;
}
