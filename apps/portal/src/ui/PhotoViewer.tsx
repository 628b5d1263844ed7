import { useEffect, useState } from 'react';
import { Dialog } from 'react-aria-components/Dialog';
import { Modal, ModalOverlay } from 'react-aria-components/Modal';
import { Button } from './Button.tsx';

export interface ViewedPhoto {
  id: string;
  src: string;
  original?: string;
  caption: string;
}

/** Photos one at a time, as large as the window. Left and right arrows move, Escape closes. */
export function PhotoViewer({
  photos,
  startAt,
  onClose,
}: {
  photos: readonly ViewedPhoto[];
  startAt: number;
  onClose: () => void;
}) {
  const [at, setAt] = useState(startAt);
  const photo = photos[at];
  const move = (by: number) => setAt((now) => Math.min(photos.length - 1, Math.max(0, now + by)));
  useEffect(() => {
    const last = photos.length - 1;
    const press = (event: KeyboardEvent) => {
      if (event.key === 'ArrowLeft') setAt((now) => Math.max(0, now - 1));
      if (event.key === 'ArrowRight') setAt((now) => Math.min(last, now + 1));
      if (event.key === 'Home') setAt(0);
      if (event.key === 'End') setAt(last);
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [photos.length]);
  if (!photo) return null;
  return (
    <ModalOverlay
      isOpen
      className="viewer"
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
    >
      <Modal>
        <Dialog aria-label={`Photo ${at + 1} of ${photos.length}`}>
          <div className="bar">
            <p>
              Photo {at + 1} of {photos.length}
            </p>
            {photo.original ? (
              <a className="button" href={photo.original} target="_blank" rel="noreferrer">
                Original file
              </a>
            ) : null}
            <Button onClick={onClose} autoFocus>
              Close
            </Button>
          </div>
          <img key={photo.id} src={photo.src} alt={photo.caption || `Photo ${at + 1}, no caption`} />
          <div className="bar">
            <p aria-live="polite">{photo.caption || 'No caption'}</p>
            <Button disabled={at === 0} onClick={() => move(-1)}>
              Previous
            </Button>
            <Button disabled={at === photos.length - 1} onClick={() => move(1)}>
              Next
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
