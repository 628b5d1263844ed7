import type { FirmRates } from '@garboard/contract/quotations';
import { feeLines, type Line } from '@garboard/trade/fees';
import { useState } from 'react';
import { wholeOf } from '../../app/money.ts';
import { Button } from '../../ui/Button.tsx';
import { TextField } from '../../ui/Field.tsx';

const figure = (text: string): number => (wholeOf(text, 3) ?? 0) / 1_000;

/** Makes the lines of a fee from the firm's rates: by length, by hour, travel, at least the minimum. */
export function FeeByRates({
  rates,
  lengthM,
  onLines,
}: {
  rates: FirmRates;
  lengthM: number | null;
  onLines: (lines: Line[]) => void;
}) {
  const [length, setLength] = useState(lengthM === null ? '' : String(lengthM));
  const [hours, setHours] = useState('');
  const [distance, setDistance] = useState('');
  return (
    <fieldset className="stack">
      <legend className="field-label">By your firm’s rates</legend>
      <div className="filters">
        {rates.perLength > 0 ? (
          <TextField
            short
            label="Length overall, m"
            inputMode="decimal"
            value={length}
            onChange={setLength}
          />
        ) : null}
        {rates.perHour > 0 ? (
          <TextField short label="Hours" inputMode="decimal" value={hours} onChange={setHours} />
        ) : null}
        {rates.perDistance > 0 ? (
          <TextField
            short
            label={`Travel there and back, ${rates.distanceUnit === 'mile' ? 'miles' : 'km'}`}
            inputMode="decimal"
            value={distance}
            onChange={setDistance}
          />
        ) : null}
        <Button
          onClick={() =>
            onLines(
              feeLines(rates, {
                lengthM: figure(length),
                hours: figure(hours),
                distance: figure(distance),
              }),
            )
          }
        >
          Fill the lines from these
        </Button>
      </div>
    </fieldset>
  );
}
