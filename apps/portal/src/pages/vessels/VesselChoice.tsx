import { useState } from 'react';
import { useAnswer, useList } from '../../api/queries.ts';
import { useSearchField } from '../../app/filters.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { RadioGroup, TextField } from '../../ui/Field.tsx';
import { VesselForm } from './VesselForm.tsx';
import { vesselLine } from './vesselWords.ts';

/** Finds a vessel by a few letters of her name, or enters a new one in a sheet over the page. */
export function VesselChoice({ value, onChange }: { value: string; onChange: (id: string) => void }) {
  const [entering, setEntering] = useState(false);
  const [q, setQ] = useState('');
  const [typed, setTyped] = useSearchField(q, setQ);
  const chosen = useAnswer('getVessel', { params: { id: value } }, { enabled: Boolean(value) });
  const list = useList('listVessels', { query: { limit: 8, q: q || undefined } }, { enabled: !value });
  if (value) {
    return (
      <div className="field">
        <span className="field-label">Vessel</span>
        <ErrorNotice quiet error={chosen.error} />
        <p>{chosen.data ? `${chosen.data.name}${vesselLine(chosen.data, ', ')}` : '…'}</p>
        <Button kind="quiet" onClick={() => onChange('')}>
          Choose another vessel
        </Button>
      </div>
    );
  }
  const options = Object.fromEntries(
    (list.items ?? []).map((vessel) => [vessel.id, `${vessel.name}${vesselLine(vessel, ', ')}`]),
  );
  return (
    <div className="stack">
      <TextField
        label="Vessel"
        hint="Part of the name or hull number."
        type="search"
        value={typed}
        onChange={setTyped}
      />
      <ErrorNotice quiet error={list.error} onRetry={list.retry} />
      {list.items?.length ? (
        <RadioGroup label="Vessels" name="vessel" value="" options={options} onChange={onChange} />
      ) : null}
      {list.items && !list.items.length ? <p>No vessel of that name here yet.</p> : null}
      <Button onClick={() => setEntering(true)}>Enter a new vessel</Button>
      {entering ? (
        <VesselForm
          suggestedName={typed}
          onClose={() => setEntering(false)}
          onSaved={(vessel) => {
            setEntering(false);
            onChange(vessel.id);
          }}
        />
      ) : null}
    </div>
  );
}
