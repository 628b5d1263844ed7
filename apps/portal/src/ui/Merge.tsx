import { useEffect, useRef, useState } from 'react';
import type { Side } from '../app/merge.ts';
import { divergingKeys, merged, proposal } from '../app/merge.ts';
import { Button } from './Button.tsx';

/** Puts two people's versions together, field by field, with both texts side by side. */
export function Merge<V extends object>({
  base,
  mine,
  theirs,
  labels,
  show,
  busy,
  onSettle,
  onPostpone,
}: {
  base: V;
  mine: V;
  theirs: V;
  labels: Readonly<Record<keyof V & string, string>>;
  show: (key: keyof V & string, values: V) => string;
  busy: boolean;
  onSettle: (together: V) => void;
  onPostpone: () => void;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  const keys = divergingKeys(base, mine, theirs);
  const [sides, setSides] = useState<Partial<Record<keyof V, Side>>>(() => {
    const proposed: Partial<Record<keyof V, Side>> = {};
    for (const key of keys) proposed[key] = proposal(base, mine, key);
    return proposed;
  });
  useEffect(() => heading.current?.focus(), []);
  const option = (key: keyof V & string, side: Side, values: V) => (
    <label>
      <input
        type="radio"
        name={`merge-${key}`}
        checked={sides[key] === side}
        onChange={() => setSides((now) => ({ ...now, [key]: side }))}
      />
      <span>
        <strong>{side === 'mine' ? 'Yours' : 'Theirs'}</strong>
        {'\n'}
        {show(key, values) || '(empty)'}
      </span>
    </label>
  );
  return (
    <section className="notice">
      <h2 ref={heading} tabIndex={-1}>
        Someone else changed this while you were writing
      </h2>
      <p>
        Nothing is lost.{' '}
        {keys.length
          ? 'Choose for each field whose text is to stand. Everything else you wrote stays as you wrote it.'
          : 'Their changes and yours do not touch the same fields; both can stand.'}
      </p>
      {keys.map((key) => (
        <fieldset key={key}>
          <legend className="field-label">{labels[key]}</legend>
          <div className="compare">
            {option(key, 'mine', mine)}
            {option(key, 'theirs', theirs)}
          </div>
        </fieldset>
      ))}
      <div className="actions">
        <Button kind="main" busy={busy} onClick={() => onSettle(merged(mine, theirs, sides))}>
          Save it like this
        </Button>
        <Button onClick={onPostpone}>Back to my text</Button>
      </div>
    </section>
  );
}
