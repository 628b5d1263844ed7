import { uuidv7 } from 'uuidv7';
import { fieldError } from '../../api/problems.ts';
import { Button } from '../../ui/Button.tsx';
import { TextField } from '../../ui/Field.tsx';
import type { ItemDraft } from './findingDraft.ts';
import { findingLabels } from './findingDraft.ts';

const mostItems = 30;

/** Several things that one finding asks for, each of which can be cleared by itself. */
export function ItemsField({
  items,
  onChange,
  error,
}: {
  items: readonly ItemDraft[];
  onChange: (items: ItemDraft[]) => void;
  error: unknown;
}) {
  const refused = fieldError(error, '/items');
  // An empty one isn't sent, and what is said of the others counts without it.
  const pointer = (item: ItemDraft) => `/items/${items.filter((one) => one.text.trim()).indexOf(item)}/text`;
  return (
    <fieldset className="field stack">
      <legend className="field-label">
        {findingLabels.items}
        <span className="soft"> (optional)</span>
      </legend>
      <span className="field-hint">
        Where a finding asks for several things, evidence can be sent and accepted for each.
      </span>
      {refused ? <span className="field-error">{refused}</span> : null}
      {items.map((item, at) => (
        <div key={item.id}>
          <TextField
            label={`Item ${at + 1}`}
            maxLength={300}
            lang={navigator.language}
            spellCheck
            autoFocus={!item.text}
            value={item.text}
            onChange={(text) => onChange(items.map((one) => (one === item ? { ...one, text } : one)))}
            error={fieldError(error, pointer(item))}
          />
          <Button
            kind="quiet"
            aria-label={`Take out item ${at + 1}`}
            onClick={() => onChange(items.filter((one) => one !== item))}
          >
            Take out
          </Button>
        </div>
      ))}
      {items.length < mostItems ? (
        <Button onClick={() => onChange([...items, { id: uuidv7(), text: '' }])}>
          {items.length ? 'Add another item' : 'Add an item'}
        </Button>
      ) : null}
    </fieldset>
  );
}
