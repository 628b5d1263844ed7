import type { CoverageAnswer, CoverageItem } from '@garboard/contract/coverage';
import { reachLabels, reachNeedsReason, reasonMissing } from '@garboard/trade/coverage';
import { systemLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { keepCoverage, type Place } from '../../capture/keep.ts';
import type { KeptCoverage } from '../../capture/kept.ts';
import { coverageId } from '../../capture/kept.ts';
import { Button } from '../../ui/Button.tsx';
import { RadioGroup, TextArea, TextField } from '../../ui/Field.tsx';
import { useStatus } from '../../ui/Status.tsx';
import { useHeard, useKept } from './data.ts';
import { Frame } from './Frame.tsx';
import { Missing } from './Missing.tsx';
import { useKeep } from './useKeep.ts';
import { usePlace } from './usePlace.ts';
import { clockWords } from './words.ts';

/** How far a system was examined, and why not further. */
export function CoveragePage({ surveyId, system }: { surveyId: string; system: string }) {
  const place = usePlace(surveyId, system);
  const heard = useHeard<CoverageItem[]>('coverage', surveyId);
  const kept = useKept();
  if (!place || heard === undefined) return <Missing loading={place !== null} />;
  const seen = heard?.data.find((item) => item.system === place.system);
  const waiting = kept.find(
    (item) => item.id === coverageId(surveyId, place.system) && item.state !== 'sent',
  );
  const mine = waiting?.kind === 'coverage' ? waiting : null;
  return (
    <Answer
      key={`${seen?.version ?? 0}-${mine?.keptAt ?? 0}`}
      place={place}
      seen={seen}
      mine={mine}
      at={heard?.at ?? null}
    />
  );
}

function Answer({
  place,
  seen,
  mine,
  at,
}: {
  place: Place;
  seen: CoverageItem | undefined;
  mine: KeptCoverage | null;
  at: number | null;
}) {
  const [, go] = useLocation();
  const say = useStatus();
  const { run, busy, trouble } = useKeep();
  const from: CoverageAnswer = mine?.answer ?? seen ?? { reached: null, reason: '', lookedFrom: '' };
  const [reached, setReached] = useState(from.reached);
  const [reason, setReason] = useState(from.reason);
  const [lookedFrom, setLookedFrom] = useState(from.lookedFrom);
  const [fault, setFault] = useState<string>();
  const home = `/capture/${place.survey.id}/${place.system}`;
  const keep = () => {
    if (!reached) return setFault('Choose one of the four.');
    if (reachNeedsReason(reached) && !reason.trim()) return setFault(reasonMissing);
    setFault(undefined);
    return void run(async () => {
      await keepCoverage(place, { reached, reason: reason.trim(), lookedFrom: lookedFrom.trim() }, seen);
      say('Kept.');
      go(home);
    });
  };
  return (
    <Frame
      title="How far examined"
      over={
        <>
          <strong>{place.survey.name}</strong> · {systemLabels[place.system]}
        </>
      }
      under={!mine && at ? `As the server had it, ${clockWords(at)}` : null}
      back={{ href: home, label: systemLabels[place.system] }}
    >
      <form
        className="stack capture-radios"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        <RadioGroup
          label={systemLabels[place.system]}
          name="reached"
          value={reached ?? ''}
          options={reachLabels}
          error={reached ? undefined : fault}
          onChange={setReached}
        />
        {reached && reached !== 'examined' ? (
          <TextArea
            label="Why?"
            optional={!reachNeedsReason(reached)}
            dir="auto"
            rows={3}
            maxLength={2000}
            value={reason}
            error={fault}
            onChange={(words) => {
              setReason(words);
              setFault(undefined);
            }}
          />
        ) : null}
        {reached && reached !== 'not-fitted' ? (
          <TextField
            label="Looked at from"
            hint="Such as “from the cockpit locker, with a mirror”"
            optional
            dir="auto"
            maxLength={300}
            value={lookedFrom}
            onChange={setLookedFrom}
          />
        ) : null}
        {trouble ? (
          <p className="field-error" role="alert">
            {trouble}
          </p>
        ) : null}
        <div className="capture-actions">
          <Button kind="main" type="submit" busy={busy} busyLabel="Keeping…">
            Keep
          </Button>
        </div>
      </form>
    </Frame>
  );
}
