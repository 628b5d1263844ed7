import { usualEquipment } from '@garboard/trade/inventory';
import { systemLabels } from '@garboard/trade/vocabulary';
import { useId } from 'react';
import { fieldError } from '../../api/problems.ts';
import { SelectField, TextArea, TextField } from '../../ui/Field.tsx';
import { type EquipmentDraft, equipmentLabels as labels, named } from './equipmentDraft.ts';

/** The fields of a piece of equipment; usual kinds are offered, any words are taken. */
export function EquipmentFields({
  draft,
  set,
  error,
}: {
  draft: EquipmentDraft;
  set: (change: Partial<EquipmentDraft>) => void;
  error: unknown;
}) {
  const kinds = useId();
  const text = (key: 'place' | 'maker' | 'serialNumber') => (
    <TextField
      label={labels[key]}
      optional
      maxLength={key === 'place' ? 200 : 120}
      value={draft[key]}
      onChange={(value) => set({ [key]: value })}
      error={fieldError(error, `/${key}`)}
    />
  );
  return (
    <>
      <TextField
        label={labels.name}
        hint="Choose a usual kind or write your own words."
        required
        maxLength={120}
        list={kinds}
        value={draft.name}
        onChange={(name) => set(named(draft, name))}
        error={fieldError(error, '/name')}
      />
      <datalist id={kinds}>
        {usualEquipment.map(({ name }) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <div className="fields-2">
        <SelectField
          label={labels.system}
          required
          value={draft.system}
          options={systemLabels}
          empty="Choose the system"
          onChange={(system) => set({ system })}
          error={fieldError(error, '/system')}
        />
        <TextField
          label={labels.count}
          type="number"
          required
          min={1}
          max={9999}
          step={1}
          value={draft.count}
          onChange={(count) => set({ count })}
          error={fieldError(error, '/count')}
        />
        {text('place')}
        {text('maker')}
        {text('serialNumber')}
      </div>
      <div className="fields-2">
        <TextField
          label={labels.madeOn}
          optional
          hint="Of a marked month or year its first day."
          type="date"
          value={draft.madeOn}
          onChange={(madeOn) => set({ madeOn })}
          error={fieldError(error, '/madeOn')}
        />
        <TextField
          label={labels.expiresOn}
          optional
          hint="Of a marked month its last day, or when service falls due."
          type="date"
          value={draft.expiresOn}
          onChange={(expiresOn) => set({ expiresOn })}
          error={fieldError(error, '/expiresOn')}
        />
      </div>
      <TextArea
        label={labels.note}
        optional
        rows={2}
        maxLength={4000}
        value={draft.note}
        onChange={(note) => set({ note })}
        error={fieldError(error, '/note')}
      />
    </>
  );
}
