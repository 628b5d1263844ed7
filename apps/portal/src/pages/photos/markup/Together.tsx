import type { Mark, Photo } from '@garboard/contract/photos';
import { useEffect, useRef, useState } from 'react';
import { Button } from '../../../ui/Button.tsx';
import { RadioGroup } from '../../../ui/Field.tsx';
import { MarkDrawing } from './MarkDrawing.tsx';
import { PlainPicture } from './PlainPicture.tsx';
import { marksInWords } from './words.ts';

type Choice = 'together' | 'mine' | 'theirs';

/** Two people marked the same photo: shows both sets together, or either, and saves the one chosen. */
export function Together({
  photo,
  mine,
  theirs,
  together,
  busy,
  onSettle,
}: {
  /** As the server has it now. */
  photo: Photo;
  mine: Mark[];
  theirs: Mark[];
  together: Mark[];
  busy: boolean;
  onSettle: (marks: Mark[]) => void;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const [choice, setChoice] = useState<Choice>('together');
  const sets = { together, mine, theirs };
  const options = {
    together: `Both together: ${marksInWords(together).toLowerCase()}`,
    mine: `Yours: ${marksInWords(mine).toLowerCase()}`,
    theirs: `Theirs: ${marksInWords(theirs).toLowerCase()}`,
  };
  const size = { width: photo.width, height: photo.height };
  return (
    <section className="notice">
      <h2 ref={heading} tabIndex={-1}>
        Someone else changed this photo while you were drawing
      </h2>
      <p>Nothing is lost. Choose which marks are to stand; they are shown below.</p>
      <RadioGroup label="Marks" name="together" value={choice} options={options} onChange={setChoice} />
      <svg
        className="stage"
        role="img"
        aria-label={options[choice]}
        viewBox={`0 0 ${size.width} ${size.height}`}
      >
        <PlainPicture photo={photo} />
        {sets[choice].map((mark) => (
          <MarkDrawing key={JSON.stringify(mark)} mark={mark} size={size} thumb={photo.images.thumb} />
        ))}
      </svg>
      <div className="actions">
        <Button kind="main" busy={busy} onClick={() => onSettle(sets[choice])}>
          Save these marks
        </Button>
      </div>
    </section>
  );
}
