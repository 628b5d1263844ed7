import type { Vessel } from '@garboard/contract/vessels';
import { hullMaterialLabels, labelOf, propulsionLabels } from '@garboard/trade/vocabulary';
import { formatLength, formatMass } from '../../ui/format.ts';

type Particulars = Omit<Vessel, 'id' | 'firmId' | 'createdAt' | 'updatedAt' | 'version'>;

/** Builder, model and year in one line, after a separator; empty when none of them is known. */
export function vesselLine(vessel: Particulars, before = ''): string {
  const words = [vessel.builder, vessel.model, vessel.yearBuilt].filter(Boolean).join(' ');
  return words && before + words;
}

/** What is known of a vessel, as label and value; the unknown is left out. */
export function vesselFacts(vessel: Particulars): [string, string][] {
  const facts: [string, string | number | null][] = [
    ['Builder', vessel.builder],
    ['Model', vessel.model],
    ['Built', vessel.yearBuilt],
    ['Hull number', vessel.hullNumber],
    ['Official number', vessel.officialNumber],
    ['Hull material', vessel.hullMaterial && labelOf(hullMaterialLabels, vessel.hullMaterial)],
    ['Propulsion', vessel.propulsion && labelOf(propulsionLabels, vessel.propulsion)],
    ['Length overall', vessel.lengthOverallM && formatLength(vessel.lengthOverallM)],
    ['Beam', vessel.beamM && formatLength(vessel.beamM)],
    ['Draught', vessel.draftM && formatLength(vessel.draftM)],
    ['Displacement', vessel.displacementKg && formatMass(vessel.displacementKg)],
    ['Home port', vessel.homePort],
    ['Flag', vessel.flag],
  ];
  return facts.flatMap(([label, value]) => (value === null || value === '' ? [] : [[label, String(value)]]));
}
