import type { Photo } from '@garboard/contract/photos';
import { pathOf } from '../../../api/client.ts';

// What every browser reads; a HEIC original is shown by few.
const readable = ['image/jpeg', 'image/png', 'image/webp'];

/** Whether the picture can be shown without the marks that were burned into its sizes. */
export function canShowPlain(photo: Photo): boolean {
  return (photo.state === 'ready' && !photo.marks.length) || readable.includes(photo.mediaType);
}

/**
 * The picture under the marks, without any. The sizes made by the server carry the marks last saved, so with marks it
 * is the original, which the browser sets upright and which is then turned as the photo is.
 */
export function PlainPicture({ photo }: { photo: Photo }) {
  const { width, height, quarterTurns } = photo;
  if ((photo.state === 'ready' && !photo.marks.length) || !readable.includes(photo.mediaType)) {
    return <image href={photo.images.screen ?? photo.images.thumb ?? ''} width={width} height={height} />;
  }
  const lies = quarterTurns % 2 === 1;
  const turn = [
    undefined,
    `translate(${width} 0) rotate(90)`,
    `translate(${width} ${height}) rotate(180)`,
    `translate(0 ${height}) rotate(270)`,
  ][quarterTurns];
  return (
    <image
      href={pathOf('getPhotoImage', { id: photo.id }, { size: 'original', v: photo.sha256 })}
      width={lies ? height : width}
      height={lies ? width : height}
      transform={turn}
    />
  );
}
