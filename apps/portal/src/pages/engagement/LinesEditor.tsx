import { reckonLine, totalsOf, writtenAmount } from '@garboard/trade/fees';
import { Button } from '../../ui/Button.tsx';
import { TextField } from '../../ui/Field.tsx';
import { freshLine, type LineDraft, lineFrom, lineProblem, linesFrom } from './lineDraft.ts';

/** The lines of a quotation or an invoice, with what they come to while they are written. */
export function LinesEditor({
  lines,
  onChange,
  currency,
  taxRate,
  shown,
}: {
  lines: readonly LineDraft[];
  onChange: (lines: LineDraft[]) => void;
  currency: string;
  /** The firm's usual rate, for a line that is added. */
  taxRate: number;
  /** Whether to say what is wrong: once somebody has tried to save. */
  shown: boolean;
}) {
  const change = (at: number, part: Partial<LineDraft>) =>
    onChange(lines.map((line, i) => (i === at ? { ...line, ...part } : line)));
  const reckoned = linesFrom(lines, currency);
  return (
    <fieldset className="stack">
      <legend className="field-label">Lines, in {currency}</legend>
      {lines.length ? null : <p className="soft">None yet.</p>}
      {lines.map((line, at) => {
        const kept = lineFrom(line, currency);
        return (
          <fieldset key={line.key} aria-label={`Line ${at + 1}`} className="filters">
            <TextField
              className="grow"
              label="For"
              maxLength={200}
              value={line.text}
              onChange={(text) => change(at, { text })}
              error={shown ? lineProblem(line, currency) : undefined}
            />
            <TextField
              short
              label="Quantity"
              inputMode="decimal"
              value={line.quantity}
              onChange={(quantity) => change(at, { quantity })}
            />
            <TextField
              short
              label="Unit"
              maxLength={12}
              value={line.unit}
              onChange={(unit) => change(at, { unit })}
            />
            <TextField
              short
              label="Price"
              inputMode="decimal"
              value={line.price}
              onChange={(price) => change(at, { price })}
            />
            <TextField
              short
              label="Tax, %"
              inputMode="decimal"
              value={line.tax}
              onChange={(tax) => change(at, { tax })}
            />
            <p className="num">{kept ? writtenAmount(reckonLine(kept).net, currency) : ''}</p>
            <Button
              kind="quiet"
              aria-label={`Remove line ${at + 1}`}
              onClick={() => onChange(lines.filter((_, i) => i !== at))}
            >
              Remove
            </Button>
          </fieldset>
        );
      })}
      <div className="actions">
        <Button onClick={() => onChange([...lines, freshLine(taxRate)])}>Add a line</Button>
      </div>
      {reckoned?.length ? <Sum totals={totalsOf(reckoned)} currency={currency} /> : null}
    </fieldset>
  );
}

function Sum({ totals, currency }: { totals: ReturnType<typeof totalsOf>; currency: string }) {
  return (
    <p aria-live="polite">
      {writtenAmount(totals.net, currency)} and {writtenAmount(totals.tax, currency)} of tax:{' '}
      <strong>{writtenAmount(totals.total, currency)}</strong>
    </p>
  );
}
