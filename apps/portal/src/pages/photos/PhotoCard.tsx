import { etagOf } from '@garboard/contract/client';
import type { Photo } from '@garboard/contract/photos';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { formatInstant } from '../../ui/format.ts';
import { CaptionField } from './CaptionField.tsx';

/** A photo in the survey's collection: look, caption, turn, delete. */
export function PhotoCard({
  photo,
  number,
  timeZone,
  editable,
  onOpen,
}: {
  photo: Photo;
  number: number;
  timeZone: string;
  editable: boolean;
  onOpen: () => void;
}) {
  const [asking, setAsking] = useState(false);
  const turn = useAction({
    run: (quarterTurns: number) =>
      call('updatePhoto', { params: { id: photo.id }, body: { quarterTurns }, ifMatch: etagOf(photo) }),
    done: `Photo ${number} turned.`,
    touches: ['listPhotos', 'listFindings', 'getFinding'],
  });
  const remove = useAction({
    run: () => call('deletePhoto', { params: { id: photo.id } }),
    done: `Photo ${number} deleted.`,
    touches: ['listPhotos', 'getSurvey'],
    onDone: () => setAsking(false),
  });
  return (
    <li className="stack">
      <PhotoFrame photo={photo} number={number} onOpen={onOpen} />
      <p className="soft small">
        {photo.takenAt ? formatInstant(photo.takenAt, timeZone) : `No capture time: ${photo.fileName}`}
      </p>
      {editable ? (
        <>
          <CaptionField photo={photo} number={number} />
          <div className="row">
            <Button
              kind="quiet"
              aria-label={`Turn photo ${number} right`}
              busy={turn.busy}
              onClick={() => turn.run((photo.quarterTurns + 1) % 4)}
            >
              Turn right
            </Button>
            <Button kind="quiet" aria-label={`Delete photo ${number}`} onClick={() => setAsking(true)}>
              Delete
            </Button>
          </div>
        </>
      ) : (
        <p>{photo.caption}</p>
      )}
      <ErrorNotice error={turn.error} />
      {asking ? (
        <ConfirmDialog
          title={`Delete photo ${number}?`}
          confirmLabel="Delete the photo"
          busy={remove.busy}
          onClose={() => {
            remove.clear();
            setAsking(false);
          }}
          onConfirm={() => remove.run(undefined)}
        >
          <p>
            {photo.caption || photo.fileName} will be gone for good. A photo that a finding uses can't be
            deleted.
          </p>
          <ErrorNotice error={remove.error} />
        </ConfirmDialog>
      ) : null}
    </li>
  );
}

/** The picture itself as a button that opens it large; says so while it is still being prepared. */
export function PhotoFrame({
  photo,
  number,
  onOpen,
}: {
  photo: { caption: string; state?: Photo['state']; images: { thumb: string | null } };
  number: number;
  onOpen: () => void;
}) {
  return (
    <button type="button" className="photo-frame" onClick={onOpen}>
      <span className="photo-number">{number}</span>
      {photo.images.thumb ? (
        <img
          src={photo.images.thumb}
          alt={photo.caption || `Photo ${number}, no caption`}
          loading="lazy"
          decoding="async"
        />
      ) : (
        <span className="photo-waiting">
          {photo.state === 'failed' ? 'This photo could not be prepared' : 'Being prepared…'}
        </span>
      )}
    </button>
  );
}
