import type { Mark } from '@garboard/contract/photos';
import { Button } from '../../../ui/Button.tsx';
import { RadioGroup, TextField } from '../../../ui/Field.tsx';
import { drawn, type Shape, type Size, type Tone } from './geometry.ts';
import { markName, shapeLabels, shapes } from './words.ts';

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

/** What is drawn next, and how; and what can be changed of the mark that is chosen. */
export function MarkChoices({
  tool,
  tone,
  marks,
  chosen,
  size,
  onTool,
  onTone,
  onAdd,
  onChange,
  onRemove,
}: {
  tool: Shape | null;
  tone: Tone;
  marks: readonly Mark[];
  chosen: number | null;
  size: Size;
  onTool: (tool: Shape | null) => void;
  onTone: (tone: Tone) => void;
  onAdd: (mark: Mark) => void;
  onChange: (marks: Mark[], choose?: number) => void;
  onRemove: (at: number) => void;
}) {
  const held = chosen === null ? undefined : marks[chosen];
  const replace = (mark: Mark) => {
    if (chosen !== null)
      onChange(
        marks.map((other, at) => (at === chosen ? mark : other)),
        chosen,
      );
  };
  const middle = (shape: Shape): Mark =>
    shape === 'label'
      ? { shape, at: { x: 0.45, y: 0.48 }, text: 'Label', tone }
      : drawn(
          shape,
          shape === 'ring' ? { x: 0.5, y: 0.5 } : { x: 0.4, y: 0.4 },
          { x: 0.6, y: 0.6 },
          tone,
          size,
        );
  const toneNow: Tone =
    held && 'tone' in held && held.tone ? held.tone : held?.shape === 'label' ? 'ink' : 'signal';
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
      {tool ? <Button onClick={() => onAdd(middle(tool))}>Put one in the middle</Button> : null}
      {held && chosen !== null ? (
        <fieldset className="stack section">
          <legend className="field-label">{markName(held, chosen)}</legend>
          {held.shape === 'label' ? (
            <TextField
              label="Words"
              maxLength={80}
              value={held.text}
              // A label must say something; an empty field is put right when it is left.
              onChange={(text) => replace({ ...held, text })}
              onBlur={() => {
                if (!held.text.trim()) replace({ ...held, text: 'Label' });
              }}
            />
          ) : null}
          {held.shape === 'blur' ? null : (
            <RadioGroup
              label="Colour"
              name="held-tone"
              value={toneNow}
              options={tones}
              onChange={(next) => replace({ ...held, tone: next })}
            />
          )}
          <Button onClick={() => onRemove(chosen)}>Remove this mark</Button>
        </fieldset>
      ) : tool && tool !== 'blur' ? (
        <RadioGroup
          label="Colour of the next"
          name="next-tone"
          value={tone}
          options={tones}
          onChange={onTone}
        />
      ) : null}
    </div>
  );
}
