import { useId } from 'react';
import type { Place } from '../../capture/keep.ts';
import { useKeeping } from './unkept.tsx';

/** Opens the camera, or the pictures already on the telephone. Whatever comes back is kept at once. */
export function TakePhotos({ place, noteId }: { place: Place; noteId: string | null }) {
  const { keep, busy } = useKeeping();
  const give = (files: File[]) => {
    if (files.length) void keep(files.map((file) => ({ place, file, noteId })));
  };
  return (
    <>
      <Picker label={busy ? 'Keeping…' : 'Take a photo'} main camera onFiles={give} />
      <Picker label="Choose photos of this telephone" onFiles={give} />
    </>
  );
}

function Picker({
  label,
  main = false,
  camera = false,
  onFiles,
}: {
  label: string;
  main?: boolean;
  camera?: boolean;
  onFiles: (files: File[]) => void;
}) {
  const id = useId();
  return (
    <div className="capture-picker">
      <input
        id={id}
        type="file"
        accept="image/*,.heic,.heif"
        multiple={!camera}
        {...(camera ? { capture: 'environment' } : {})}
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          event.target.value = '';
        }}
      />
      <label htmlFor={id} className={`button ${main ? 'button-main' : 'button-plain'}`}>
        {label}
      </label>
    </div>
  );
}
