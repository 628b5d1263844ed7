import { useRef, useState } from 'react';

/** A caption while it is written, in its place under the photo. Enter saves and goes on, Escape leaves it as it was. */
export function CaptionLine({
  text,
  number,
  problem,
  onSave,
  onNext,
  onLeave,
  onCancel,
}: {
  text: string;
  number: number;
  /** Why it could not be saved the last time. */
  problem: string | null;
  onSave: (text: string) => void;
  onNext: () => void;
  /** The focus has gone elsewhere. */
  onLeave: () => void;
  onCancel: () => void;
}) {
  const [typed, setTyped] = useState(text);
  // The field goes when it is done with, and its going away must not save a second time.
  const done = useRef(false);
  const finish = (save: boolean, then: () => void) => {
    if (done.current) return;
    done.current = true;
    if (save && (typed !== text || problem)) onSave(typed);
    then();
  };
  return (
    <div className="caption-line">
      {problem ? <p className="small">{problem} Enter saves yours.</p> : null}
      <input
        className="input"
        aria-label={`Caption of photo ${number}`}
        ref={focusOnce}
        maxLength={500}
        spellCheck
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={() => finish(true, onLeave)}
        onKeyDown={(event) => {
          if (event.nativeEvent.isComposing) return;
          if (event.key === 'Escape') finish(false, onCancel);
          if (event.key !== 'Enter') return;
          event.preventDefault();
          finish(true, onNext);
        }}
      />
    </div>
  );
}

// The person has just asked to write here.
function focusOnce(field: HTMLInputElement | null) {
  if (field && document.activeElement !== field) field.focus();
}
