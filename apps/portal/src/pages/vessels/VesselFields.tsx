import { hullMaterialLabels, labelOf, propulsionLabels } from '@garboard/trade/vocabulary';
import { fieldError } from '../../api/problems.ts';
import { SelectField, TextField } from '../../ui/Field.tsx';
import type { VesselDraft } from './vesselDraft.ts';

const lines = [
  ['builder', 'Builder', 120],
  ['model', 'Model', 120],
  ['hullNumber', 'Hull number', 40],
  ['officialNumber', 'Official number', 40],
  ['homePort', 'Home port', 120],
  ['flag', 'Flag', 60],
] as const;

const measures = [
  ['lengthOverallM', 'Length overall, metres', 200],
  ['beamM', 'Beam, metres', 60],
  ['draftM', 'Draught, metres', 30],
  ['displacementKg', 'Displacement, kilograms', 20_000_000],
] as const;

/** The usual choices, and the vessel's own words when they are none of them. */
const withOwnWords = (usual: Record<string, string>, value: string): Record<string, string> =>
  value ? { ...usual, [value]: labelOf(usual, value) } : usual;

/** The particulars of a vessel. Only the name is required. */
export function VesselFields({
  draft,
  set,
  error,
}: {
  draft: VesselDraft;
  set: (change: Partial<VesselDraft>) => void;
  error: unknown;
}) {
  return (
    <>
      <TextField
        label="Name"
        required
        maxLength={120}
        value={draft.name}
        onChange={(name) => set({ name })}
        error={fieldError(error, '/name')}
      />
      <div className="fields-2">
        {lines.map(([key, label, maxLength]) => (
          <TextField
            key={key}
            label={label}
            optional
            maxLength={maxLength}
            value={draft[key]}
            onChange={(value) => set({ [key]: value })}
            error={fieldError(error, `/${key}`)}
          />
        ))}
        <TextField
          label="Year built"
          optional
          type="number"
          min={1800}
          max={2100}
          step={1}
          value={draft.yearBuilt}
          onChange={(yearBuilt) => set({ yearBuilt })}
          error={fieldError(error, '/yearBuilt')}
        />
        <SelectField
          label="Hull material"
          value={draft.hullMaterial}
          options={withOwnWords(hullMaterialLabels, draft.hullMaterial)}
          empty="Not stated"
          onChange={(hullMaterial) => set({ hullMaterial })}
        />
        <SelectField
          label="Propulsion"
          value={draft.propulsion}
          options={withOwnWords(propulsionLabels, draft.propulsion)}
          empty="Not stated"
          onChange={(propulsion) => set({ propulsion })}
        />
        {measures.map(([key, label, max]) => (
          <TextField
            key={key}
            label={label}
            optional
            type="number"
            min={0}
            max={max}
            step="any"
            inputMode="decimal"
            value={draft[key]}
            onChange={(value) => set({ [key]: value })}
            error={fieldError(error, `/${key}`)}
          />
        ))}
      </div>
    </>
  );
}
