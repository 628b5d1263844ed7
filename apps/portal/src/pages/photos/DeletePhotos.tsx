import type { Photo } from '@garboard/contract/photos';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog, Dialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count } from '../../ui/format.ts';
import type { Kept } from './usePhotoChanges.ts';
import { useDeleting } from './usePhotoChanges.ts';

/** Asks before photos are deleted, then says which were kept and why. */
export function DeletePhotos({
  photos,
  numberOf,
  onClose,
}: {
  photos: readonly Photo[];
  numberOf: (id: string) => number;
  /** Told which photos are gone. */
  onClose: (gone: string[]) => void;
}) {
  const [kept, setKept] = useState<Kept[]>([]);
  const gone = (left: Kept[]) =>
    photos.filter((photo) => !left.some((one) => one.photo.id === photo.id)).map((photo) => photo.id);
  const deleting = useDeleting((left) => (left.length ? setKept(left) : onClose(gone([]))));
  if (kept.length) {
    return (
      <Dialog
        title={`${count(kept.length, 'photo was', 'photos were')} not deleted`}
        onClose={() => onClose(gone(kept))}
      >
        <ul className="bullets">
          {kept.map(({ photo, reason }) => (
            <li key={photo.id}>
              Photo {numberOf(photo.id)}: {reason}
            </li>
          ))}
        </ul>
        <div className="actions">
          <Button kind="main" onClick={() => onClose(gone(kept))} autoFocus>
            Close
          </Button>
        </div>
      </Dialog>
    );
  }
  const [only] = photos;
  return (
    <ConfirmDialog
      title={
        photos.length === 1 && only ? `Delete photo ${numberOf(only.id)}?` : `Delete ${photos.length} photos?`
      }
      confirmLabel={photos.length === 1 ? 'Delete the photo' : 'Delete the photos'}
      busy={deleting.busy}
      onClose={() => onClose([])}
      onConfirm={() => deleting.run(photos)}
    >
      <p>
        {photos.length === 1 && only ? only.caption || only.fileName : 'They'} will be gone for good. A photo
        that a finding or a report shows is kept.
      </p>
      <ErrorNotice error={deleting.error} />
    </ConfirmDialog>
  );
}
