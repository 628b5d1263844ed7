import type { Vessel } from '@garboard/contract/vessels';
import type { CallArgs } from '../../api/client.ts';

type Body = CallArgs<'createVessel'>['body'];

/** A vessel as written in a form: everything text, numbers too. */
export interface VesselDraft {
  name: string;
  hullNumber: string;
  officialNumber: string;
  builder: string;
  model: string;
  yearBuilt: string;
  hullMaterial: string;
  propulsion: string;
  lengthOverallM: string;
  beamM: string;
  draftM: string;
  displacementKg: string;
  homePort: string;
  flag: string;
}

/** A form filled from a vessel, or an empty one. */
export function draftOf(vessel: Vessel | null, suggestedName = ''): VesselDraft {
  const figure = (value: number | null | undefined) => (value == null ? '' : String(value));
  return {
    name: vessel?.name ?? suggestedName,
    hullNumber: vessel?.hullNumber ?? '',
    officialNumber: vessel?.officialNumber ?? '',
    builder: vessel?.builder ?? '',
    model: vessel?.model ?? '',
    yearBuilt: figure(vessel?.yearBuilt),
    hullMaterial: vessel?.hullMaterial ?? '',
    propulsion: vessel?.propulsion ?? '',
    lengthOverallM: figure(vessel?.lengthOverallM),
    beamM: figure(vessel?.beamM),
    draftM: figure(vessel?.draftM),
    displacementKg: figure(vessel?.displacementKg),
    homePort: vessel?.homePort ?? '',
    flag: vessel?.flag ?? '',
  };
}

/** The form as the API wants it; an empty field is null. The browser has let only figures into number fields. */
export function bodyOf(draft: VesselDraft): Body {
  const line = (value: string) => value.trim() || null;
  const figure = (value: string) => (value.trim() ? Number(value) : null);
  return {
    name: draft.name,
    hullNumber: line(draft.hullNumber),
    officialNumber: line(draft.officialNumber),
    builder: line(draft.builder),
    model: line(draft.model),
    yearBuilt: figure(draft.yearBuilt),
    hullMaterial: draft.hullMaterial || null,
    propulsion: draft.propulsion || null,
    lengthOverallM: figure(draft.lengthOverallM),
    beamM: figure(draft.beamM),
    draftM: figure(draft.draftM),
    displacementKg: figure(draft.displacementKg),
    homePort: line(draft.homePort),
    flag: line(draft.flag),
  };
}
