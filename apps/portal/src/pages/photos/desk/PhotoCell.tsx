import { memo } from 'react';
import { Button as AriaButton } from 'react-aria-components/Button';
import { GridListItem } from 'react-aria-components/GridList';
import { Link } from 'wouter';
import { formatInstant, listed } from '../../../ui/format.ts';
import { CaptionLine } from './CaptionLine.tsx';
import type { Cell } from './cells.ts';
import { useDesk } from './deskContext.ts';

/** What a photo is called aloud, and while it is dragged. */
export function nameOf({ photo, number, findings }: Cell): string {
  const places = findings.map((finding) => finding.number);
  const used = places.length ? `, in finding ${listed(places.map(String))}` : '';
  return `Photo ${number}${photo.caption ? `, ${photo.caption}` : ', no caption'}${used}`;
}

/** One photo of the grid: chosen by a click, opened by its number, its caption written in place. */
export function PhotoCell({ cell }: { cell: Cell }) {
  return (
    <GridListItem id={cell.photo.id} textValue={nameOf(cell)} className="desk-cell">
      <Inside cell={cell} />
    </GridListItem>
  );
}

const Inside = memo(function Inside({ cell }: { cell: Cell }) {
  const desk = useDesk();
  const { photo, number, findings, alike, opened, group } = cell;
  const typed = desk.typed.get(photo.id);
  const caption = typed?.text ?? photo.caption;
  return (
    <>
      <div className="desk-picture">
        {photo.images.thumb ? (
          <img
            src={photo.images.thumb}
            width={photo.thumbWidth}
            height={photo.thumbHeight}
            alt=""
            decoding="async"
            draggable={false}
          />
        ) : (
          <span className="desk-waiting">
            {photo.state === 'failed'
              ? (photo.problem ?? 'This photo could not be prepared')
              : 'Being prepared…'}
          </span>
        )}
        <Link
          className="photo-number"
          href={`/surveys/${desk.surveyId}/photos/${photo.id}`}
          aria-label={`Open photo ${number}`}
        >
          {number}
        </Link>
        {desk.editable ? (
          <AriaButton slot="drag" className="desk-drag" aria-label={`Drag photo ${number} to a finding`}>
            Drag
          </AriaButton>
        ) : null}
        {alike > 1 && group ? (
          <button
            type="button"
            className="desk-alike"
            aria-expanded={opened}
            onClick={() => desk.toggleGroup(group)}
          >
            {opened ? 'Close' : ''} {alike} alike
          </button>
        ) : null}
      </div>
      <div className="desk-words">
        {desk.writing === photo.id ? (
          <CaptionLine
            text={caption}
            number={number}
            problem={typed?.problem ?? null}
            onSave={(text) => desk.saveCaption(cell, text)}
            onNext={() => desk.afterCaption(cell, 'next')}
            onLeave={() => desk.afterCaption(cell, 'left')}
            onCancel={() => desk.afterCaption(cell, 'back')}
          />
        ) : (
          <Caption cell={cell} caption={caption} problem={typed?.problem ?? null} />
        )}
        <p className="desk-note">
          {findings.length ? (
            <strong>In finding {listed(findings.map((finding) => String(finding.number)))}</strong>
          ) : photo.takenAt ? (
            formatInstant(photo.takenAt, desk.timeZone, 'short')
          ) : (
            `No capture time: ${photo.fileName}`
          )}
        </p>
      </div>
    </>
  );
});

function Caption({ cell, caption, problem }: { cell: Cell; caption: string; problem: string | null }) {
  const desk = useDesk();
  if (!desk.editable) return <p className="desk-caption">{caption}</p>;
  return (
    <button
      type="button"
      className="desk-caption"
      // The grid has one place in the order of Tab keys; C opens this from there.
      tabIndex={-1}
      onClick={() => desk.write(cell.photo.id)}
    >
      {problem ? <span className="signal">Not saved: </span> : null}
      {caption ? (
        <>
          <span className="unseen">Caption of photo {cell.number}: </span>
          {caption}
        </>
      ) : (
        <span className="soft">
          Add a caption<span className="unseen"> to photo {cell.number}</span>
        </span>
      )}
    </button>
  );
}
