import type { Place } from '../../capture/keep.ts';
import { FilePicker } from '../../ui/FilePicker.tsx';
import { useKeeping } from './unkept.tsx';

/** Opens the camera, or the pictures already on the telephone. Whatever comes back is kept at once. */
export function TakePhotos({ place, noteId }: { place: Place; noteId: string | null }) {
  const { keep, busy } = useKeeping();
  const give = (files: File[]) => {
    if (files.length) void keep(files.map((file) => ({ place, file, noteId })));
  };
  return (
    <>
      <FilePicker label={busy ? 'Keeping…' : 'Take a photo'} main camera onFiles={give} />
      <FilePicker label="Choose photos of this telephone" onFiles={give} />
    </>
  );
}
