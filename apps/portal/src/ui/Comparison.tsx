import type { PointerEvent } from 'react';
import { useId, useState } from 'react';
import { RadioGroup } from './Field.tsx';

/** One of two pictures of the same place. */
export interface Compared {
  /** How it stands to the other, such as `Before` or `Survey 2026-0042`. */
  when: string;
  /** Date, caption and who: what the picture alone doesn't say. */
  words: string;
  /** Null while it is being prepared. */
  src: string | null;
  width: number | null;
  height: number | null;
  /** The picture as it is, to be opened by itself. */
  whole?: string | null;
}

interface Pair {
  before: Compared;
  after: Compared;
}

const views = { beside: 'Side by side', over: 'One over the other' } as const;

/** Two pictures of a place, side by side or one over the other with an edge to move. */
export function Comparison({ before, after }: Pair) {
  const [view, setView] = useState<keyof typeof views>('beside');
  const name = useId();
  if (!before.src || !after.src) return <PlainComparison before={before} after={after} />;
  return (
    <div className="stack">
      <RadioGroup label="Show them" name={name} value={view} options={views} onChange={setView} />
      {view === 'beside' ? (
        <PlainComparison before={before} after={after} />
      ) : (
        <Wipe before={before} after={after} />
      )}
    </div>
  );
}

const said = ({ when, words }: Compared) => (words ? `${when}, ${words}` : when);

/** Both pictures with their words, nothing to operate. */
export function PlainComparison({ before, after }: Pair) {
  return (
    <div className="pairs-side">
      {[before, after].map((side, at) => (
        <figure key={at === 0 ? 'before' : 'after'} className="pair">
          {side.src ? <Opening side={side} /> : <p className="photo-waiting">Being prepared…</p>}
          <figcaption>
            <strong>{side.when}</strong>
            {side.words ? `, ${side.words}` : ''}
          </figcaption>
        </figure>
      ))}
    </div>
  );
}

function Opening({ side }: { side: Compared }) {
  const picture = (
    <img
      className="whole-picture"
      src={side.src ?? ''}
      width={side.width ?? undefined}
      height={side.height ?? undefined}
      alt={side.whole ? `Open: ${said(side)}` : said(side)}
      loading="lazy"
    />
  );
  return side.whole ? (
    <a href={side.whole} target="_blank" rel="noreferrer">
      {picture}
    </a>
  ) : (
    picture
  );
}

/** The earlier picture lies over the later one up to an edge, moved on the picture itself or by the slider below it. */
function Wipe({ before, after }: Pair) {
  const [share, setShare] = useState(50);
  const shape = after.width && after.height ? after.width / after.height : 4 / 3;
  function follow(event: PointerEvent<HTMLDivElement>) {
    if (!(event.buttons & 1)) return;
    const { left, width } = event.currentTarget.getBoundingClientRect();
    setShare(Math.round(Math.min(1, Math.max(0, (event.clientX - left) / width)) * 100));
  }
  return (
    <figure className="pair" style={{ maxWidth: `calc(78dvh * ${shape})` }}>
      <div
        className="wipe"
        style={{ aspectRatio: String(shape) }}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          follow(event);
        }}
        onPointerMove={follow}
      >
        <img src={after.src ?? ''} alt={`Right of the edge: ${said(after)}`} draggable={false} />
        <img
          src={before.src ?? ''}
          alt={`Left of the edge: ${said(before)}`}
          draggable={false}
          style={{ clipPath: `inset(0 ${100 - share}% 0 0)` }}
        />
        <span className="wipe-edge" style={{ left: `${share}%` }} />
      </div>
      <label>
        Move the edge: the earlier photo lies left of it
        <input
          type="range"
          min={0}
          max={100}
          value={share}
          aria-valuetext={`${share} % of the earlier photo`}
          onChange={(event) => setShare(Number(event.target.value))}
        />
      </label>
      <figcaption className="small">
        {said(before)}
        <br />
        {said(after)}
      </figcaption>
    </figure>
  );
}
