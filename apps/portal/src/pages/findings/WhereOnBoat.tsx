import type { Finding } from '@garboard/contract/findings';
import type { HullKind } from '@garboard/trade/drawing/boat-outline';
import {
  alongInWords,
  type BoatPlace,
  heightInWords,
  isAloft,
  placeInWords,
} from '@garboard/trade/drawing/boat-places';
import { useId, useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { RadioGroup } from '../../ui/Field.tsx';
import { useStatus } from '../../ui/Status.tsx';
import { BoatPointer } from './BoatPointer.tsx';
import type { FindingDraft } from './findingDraft.ts';
import { findingLabels } from './findingDraft.ts';
import { useHullKind } from './useHullKind.ts';

const notPlaced = 'Not placed.';
const sides = { port: 'Port', centre: 'Centreline', starboard: 'Starboard' } as const;

interface Props {
  draft: FindingDraft;
  set: (change: Partial<FindingDraft>) => void;
  surveyId: string;
  findings: readonly Finding[];
}

/** Where on board the finding is, for the report's drawing of the boat; open from the start when that is known. */
export function WhereOnBoat(props: Props) {
  const [open, setOpen] = useState(props.draft.position !== null);
  return (
    <details className="boxed" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{findingLabels.position} (optional)</summary>
      {open ? <Placing {...props} /> : null}
    </details>
  );
}

/** The boat to point at, and the same by two sliders for those who don't point. */
function Placing({ draft, set, surveyId, findings }: Props) {
  const say = useStatus();
  const kind = useHullKind(surveyId, findings, true)(draft.system);
  const [side, setSide] = useState<BoatPlace['side']>(draft.position?.side ?? 'centre');
  const { position } = draft;
  const chosenSide = position?.side ?? side;
  const aloft = isAloft(draft.system);
  const place = (change: Partial<BoatPlace>) =>
    set({ position: { along: 0.5, height: 0.5, ...position, side: chosenSide, ...change } });
  return (
    <>
      <p className="soft small">
        Click or touch the boat, or move the sliders. The report’s summary shows the finding’s number there.
      </p>
      <BoatPointer kind={kind} place={position} aloft={aloft} onPlace={place} />
      <p>{position ? `Placed ${placeInWords(position)}.` : notPlaced}</p>
      <div className="place-fields">
        <Slider
          label="Fore and aft"
          ends={['Stern', 'Bow']}
          value={1 - (position?.along ?? 0.5)}
          words={position && `${percent(1 - position.along)} from the stern, ${alongInWords(position.along)}`}
          onChange={(fromStern) => place({ along: hundredth(1 - fromStern) })}
        />
        <Slider
          label="Height"
          ends={['Keel', topOf(kind, aloft)]}
          value={position?.height ?? 0.5}
          words={
            position && `${percent(position.height)} up from the keel, ${heightInWords(position.height)}`
          }
          onChange={(height) => place({ height })}
        />
        <RadioGroup
          label="Side"
          name="boat-side"
          value={chosenSide}
          options={sides}
          onChange={(chosen) => {
            setSide(chosen);
            if (position) place({ side: chosen });
          }}
        />
      </div>
      <div className="actions">
        <Button
          onClick={() => {
            set({ position: null });
            say(notPlaced);
          }}
        >
          Not placed
        </Button>
      </div>
      <p className="soft small">
        {aloft
          ? 'For this system heights go up to the highest point above the deck.'
          : 'Heights go up to the deck; findings of the rig, navigation lights and electronics may be above it.'}{' '}
        She is drawn with a mast when the survey has answered for a rig or recorded anything of one.
      </p>
    </>
  );
}

const topOf = (kind: HullKind, aloft: boolean): string => {
  if (!aloft) return 'Deck';
  return kind === 'sail' ? 'Masthead' : 'Wheelhouse top';
};
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const hundredth = (share: number): number => Math.round(share * 100) / 100;

function Slider({
  label,
  ends,
  value,
  words,
  onChange,
}: {
  label: string;
  ends: readonly [low: string, high: string];
  /** From 0 to 1. */
  value: number;
  /** The value as a screen reader says it; null while there is none. */
  words: string | null;
  onChange: (value: number) => void;
}) {
  const id = useId();
  return (
    <div className="field slider">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={100}
        step={1}
        value={Math.round(value * 100)}
        aria-valuetext={words ?? 'not placed'}
        onChange={(event) => onChange(Number(event.target.value) / 100)}
      />
      <span className="slider-ends soft small" aria-hidden="true">
        <span>{ends[0]}</span>
        <span>{ends[1]}</span>
      </span>
    </div>
  );
}
