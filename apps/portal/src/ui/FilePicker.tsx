import { useId } from 'react';

/** A button that opens the camera, or the pictures and files already on the device. */
export function FilePicker({
  label,
  main = false,
  camera = false,
  accept = 'image/*,.heic,.heif',
  onFiles,
}: {
  label: string;
  main?: boolean;
  camera?: boolean;
  /** As in the HTML attribute. */
  accept?: string;
  onFiles: (files: File[]) => void;
}) {
  const id = useId();
  return (
    <div className="picker">
      <input
        id={id}
        type="file"
        accept={accept}
        multiple={!camera}
        {...(camera ? { capture: 'environment' } : {})}
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          // The same file may be chosen again after it was taken out.
          event.target.value = '';
        }}
      />
      <label htmlFor={id} className={`button ${main ? 'button-main' : 'button-plain'}`}>
        {label}
      </label>
    </div>
  );
}
