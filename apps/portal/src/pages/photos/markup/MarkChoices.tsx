import type { Mark } from '@garboard/contract/photos';
import { Button } from '../../../ui/Button.tsx';
import { RadioGroup, TextField } from '../../../ui/Field.tsx';
import { drawn, type Shape, type Size, type Tone } from './geometry.ts';
import { markName, shapeLabels, shapes, worded } from './words.ts';

const tools = { none: 'Choose and move', ...shapeLabels };
const tones = { signal: 'Signal colour', ink: 'Ink' } as const;

const hints: Readonly<Record<Shape | 'none', string>> = {
  none: 'Press a mark to choose it; drag it, or drag its round handles. With keys: Tab to a mark, arrows move it, Shift and arrows resize it, Ctrl makes small steps, Delete removes it.',
  arrow: 'Drag from the words’ end to what it points at.',
  line: 'Drag from one end to the other.',
  ring: 'Drag from the middle outwards.',
  box: 'Drag from one corner to the other.',
  blur: 'Drag over a face, a name or a number that nobody needs to see.',
  label: 'Press where the words shall stand.',
};

/** What is drawn next, and how. */
export function MarkTools({
  tool,
  tone,
  size,
  onTool,
  onTone,
  onAdd,
}: {
  tool: Shape | null;
  tone: Tone;
  size: Size;
  onTool: (tool: Shape | null) => void;
  onTone: (tone: Tone) => void;
  onAdd: (mark: Mark) => void;
}) {
  const middle = (shape: Shape): Mark => {
    if (shape === 'label') return { shape, at: { x: 0.45, y: 0.48 }, text: shapeLabels.label, tone };
    const from = shape === 'ring' ? { x: 0.5, y: 0.5 } : { x: 0.4, y: 0.4 };
    return drawn(shape, from, { x: 0.6, y: 0.6 }, tone, size);
  };
  return (
    <div className="stack">
      <RadioGroup
        label="Draw"
        hint={hints[tool ?? 'none']}
        name="tool"
        value={tool ?? 'none'}
        options={tools}
        onChange={(next) => onTool(shapes.find((shape) => shape === next) ?? null)}
      />
      {tool && tool !== 'blur' ? (
        <RadioGroup
          label="Colour of the next"
          name="next-tone"
          value={tone}
          options={tones}
          onChange={onTone}
        />
      ) : null}
      {tool ? <Button onClick={() => onAdd(middle(tool))}>Put one in the middle</Button> : null}
    </div>
  );
}

/** What can be changed of the mark that is chosen. */
export function HeldMark({
  mark,
  at,
  onChange,
  onRemove,
}: {
  mark: Mark;
  at: number;
  onChange: (mark: Mark) => void;
  onRemove: () => void;
}) {
  return (
    <fieldset className="stack">
      <legend className="field-label">{markName(mark, at)}</legend>
      {mark.shape === 'label' ? (
        <TextField
          label="Words"
          maxLength={80}
          value={mark.text}
          onChange={(text) => onChange({ ...mark, text })}
          // A label must say something; an empty field is put right when it is left.
          onBlur={() => {
            if (!mark.text.trim()) onChange(worded(mark));
          }}
        />
      ) : null}
      {mark.shape === 'blur' ? null : (
        <RadioGroup
          label="Colour"
          name="held-tone"
          value={mark.tone ?? (mark.shape === 'label' ? 'ink' : 'signal')}
          options={tones}
          onChange={(tone) => onChange({ ...mark, tone })}
        />
      )}
      <Button onClick={onRemove}>Remove this mark</Button>
    </fieldset>
  );
}
