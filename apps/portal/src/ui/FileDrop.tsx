import type { ChangeEvent, ReactNode } from 'react';
import { useId, useState } from 'react';

/** A place to drop files on, with a picker for keyboard and telephone; with `folderLabel` another for whole folders. */
export function FileDrop({
  label,
  hint,
  accept,
  folderLabel,
  onFiles,
}: {
  label: string;
  hint: ReactNode;
  /** As in the HTML attribute: `image/*,.heic`. */
  accept: string;
  folderLabel?: string;
  onFiles: (files: File[]) => void;
}) {
  const id = useId();
  const [over, setOver] = useState(false);
  const take = (event: ChangeEvent<HTMLInputElement>) => {
    onFiles([...(event.target.files ?? [])]);
    // The same file may be chosen again after it was refused.
    event.target.value = '';
  };
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
      <input id={id} type="file" multiple accept={accept} aria-describedby={`${id}-hint`} onChange={take} />
      <label htmlFor={id} className="button button-plain">
        {label}
      </label>
      {folderLabel ? (
        <>
          <input
            id={`${id}-folder`}
            type="file"
            // React doesn't know the attribute; every desktop browser does.
            ref={(input) => input?.setAttribute('webkitdirectory', '')}
            aria-describedby={`${id}-hint`}
            onChange={take}
          />
          <label htmlFor={`${id}-folder`} className="button button-plain">
            {folderLabel}
          </label>
        </>
      ) : null}
      <span id={`${id}-hint`} className="soft">
        {hint}
      </span>
    </fieldset>
  );
}
