import type { Photo } from '@garboard/contract/photos';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { count } from '../../ui/format.ts';
import { PhotoViewer } from '../../ui/PhotoViewer.tsx';
import { CaptionField } from '../photos/CaptionField.tsx';
import { PhotoFrame } from '../photos/PhotoFrame.tsx';
import { MoveButtons } from './Findings.tsx';

/** The photos of a finding in the order of the report, and the choice out of the survey's photos. */
export function ChoosePhotos({
  photos,
  ids,
  onChange,
}: {
  photos: readonly Photo[];
  ids: readonly string[];
  onChange: (ids: string[]) => void;
}) {
  const [choosing, setChoosing] = useState(false);
  const [open, setOpen] = useState<number | null>(null);
  const chosen = ids.flatMap((id) => {
    const at = photos.findIndex((photo) => photo.id === id);
    const photo = photos[at];
    return photo ? [{ photo, number: at + 1 }] : [];
  });
  const shift = (at: number, by: number) => {
    const next = [...ids];
    const [id] = next.splice(at, 1);
    if (id) next.splice(at + by, 0, id);
    onChange(next);
  };
  return (
    <fieldset className="stack">
      <legend className="field-label">Photos</legend>
      {chosen.length ? (
        <ol className="photos">
          {chosen.map(({ photo, number }, at) => (
            <li key={photo.id} className="stack">
              <PhotoFrame photo={photo} number={number} onOpen={() => setOpen(at)} />
              <CaptionField photo={photo} number={number} />
              <div className="row">
                <MoveButtons
                  title={`photo ${number}`}
                  first={at === 0}
                  last={at === chosen.length - 1}
                  onMove={(by) => shift(at, by)}
                />
                <Button
                  kind="quiet"
                  aria-label={`Take out photo ${number}`}
                  onClick={() => onChange(ids.filter((id) => id !== photo.id))}
                >
                  Take out
                </Button>
              </div>
            </li>
          ))}
        </ol>
      ) : (
        <p className="soft">None chosen.</p>
      )}
      <Button onClick={() => setChoosing(true)}>Choose from the survey's photos</Button>
      {choosing ? (
        <Dialog title="Photos of this finding" wide onClose={() => setChoosing(false)}>
          <PhotoChecks photos={photos} ids={ids} onChange={onChange} />
          <div className="actions">
            <Button kind="main" onClick={() => setChoosing(false)}>
              Done: {count(ids.length, 'photo')}
            </Button>
          </div>
        </Dialog>
      ) : null}
      {open === null ? null : (
        <PhotoViewer
          photos={chosen.map(({ photo }) => ({
            id: photo.id,
            src: photo.images.screen ?? photo.images.thumb ?? '',
            caption: photo.caption,
          }))}
          startAt={open}
          onClose={() => setOpen(null)}
        />
      )}
    </fieldset>
  );
}

function PhotoChecks({
  photos,
  ids,
  onChange,
}: {
  photos: readonly Photo[];
  ids: readonly string[];
  onChange: (ids: string[]) => void;
}) {
  if (!photos.length) return <p>This survey has no photos yet. Add them under Photos.</p>;
  const toggle = (id: string) =>
    onChange(ids.includes(id) ? ids.filter((other) => other !== id) : [...ids, id]);
  return (
    <ul className="photos photos-small">
      {photos.map((photo, at) => (
        <li key={photo.id}>
          <label className="photo-check">
            {photo.images.thumb ? (
              // The words below name it already.
              <img src={photo.images.thumb} alt="" loading="lazy" />
            ) : (
              <span className="photo-waiting">Being prepared…</span>
            )}
            <span className="choice">
              <input type="checkbox" checked={ids.includes(photo.id)} onChange={() => toggle(photo.id)} />
              <span>
                {at + 1}. {photo.caption}
              </span>
            </span>
          </label>
        </li>
      ))}
    </ul>
  );
}
