import type { Photo } from '@garboard/contract/photos';
import { useState } from 'react';
import { RadioGroup } from '../../../ui/Field.tsx';
import { formatInstantDay } from '../../../ui/format.ts';

type Before = NonNullable<Photo['before']>;
const views = { beside: 'Side by side', over: 'One over the other' } as const;

/** An earlier photo and the one taken now, side by side or one over the other with an edge to move. */
export function PairView({ before, after, timeZone }: { before: Before; after: Photo; timeZone: string }) {
  const [view, setView] = useState<keyof typeof views>('beside');
  return (
    <div className="stack">
      <RadioGroup
        label="Show them"
        name={`pair-${after.id}`}
        value={view}
        options={views}
        onChange={setView}
      />
      {view === 'beside' ? (
        <PlainPair before={before} after={after} timeZone={timeZone} />
      ) : (
        <Wipe before={before} after={after} timeZone={timeZone} />
      )}
    </div>
  );
}

const dated = (photo: { takenAt: string | null }, timeZone: string) =>
  photo.takenAt ? formatInstantDay(photo.takenAt, timeZone) : 'date not known';

function words(photo: { takenAt: string | null; caption: string }, when: string, timeZone: string): string {
  return `${when}, ${dated(photo, timeZone)}${photo.caption ? `: ${photo.caption}` : ''}`;
}

/** Both photos with their dates and captions, nothing to operate. */
export function PlainPair({ before, after, timeZone }: { before: Before; after: Photo; timeZone: string }) {
  const sides = [
    { photo: before, when: `Survey ${before.surveyNumber}` },
    { photo: after, when: 'This survey' },
  ];
  return (
    <div className="pairs-side">
      {sides.map(({ photo, when }) => (
        <figure key={photo.id} className="pair">
          {photo.images.screen ? (
            <img
              className="whole-picture"
              src={photo.images.screen}
              width={photo.width}
              height={photo.height}
              alt={photo.caption || `${when}, no caption`}
              loading="lazy"
            />
          ) : (
            <p className="photo-waiting">Being prepared…</p>
          )}
          <figcaption>{words(photo, when, timeZone)}</figcaption>
        </figure>
      ))}
    </div>
  );
}

function Wipe({ before, after, timeZone }: { before: Before; after: Photo; timeZone: string }) {
  const [share, setShare] = useState(50);
  const earlier = words(before, `Survey ${before.surveyNumber}`, timeZone);
  const now = words(after, 'This survey', timeZone);
  return (
    <figure className="pair" style={{ maxWidth: `calc(78dvh * ${after.width / after.height})` }}>
      <div className="wipe" style={{ aspectRatio: `${after.width} / ${after.height}` }}>
        <img src={after.images.screen ?? ''} alt={`Right of the edge: ${now}`} />
        <img
          src={before.images.screen ?? ''}
          alt={`Left of the edge: ${earlier}`}
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
        {earlier}
        <br />
        {now}
      </figcaption>
    </figure>
  );
}
