import type { ReactNode } from 'react';
import { useId, useState } from 'react';

/** A place to drop files on, with a picker for keyboard and telephone. */
export function FileDrop({
  label,
  hint,
  accept,
  onFiles,
}: {
  label: string;
  hint: ReactNode;
  /** As in the HTML attribute: `image/*,.heic`. */
  accept: string;
  onFiles: (files: File[]) => void;
}) {
  const id = useId();
  const [over, setOver] = useState(false);
  return (
    <fieldset
      className="drop"
      aria-label={label}
      data-over={over}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        onFiles([...event.dataTransfer.files]);
      }}
    >
      <input
        id={id}
        type="file"
        multiple
        accept={accept}
        aria-describedby={`${id}-hint`}
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          // The same file may be chosen again after it was refused.
          event.target.value = '';
        }}
      />
      <label htmlFor={id} className="button button-plain">
        {label}
      </label>
      <span id={`${id}-hint`} className="soft">
        {hint}
      </span>
    </fieldset>
  );
}
