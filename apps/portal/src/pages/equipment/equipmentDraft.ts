import type { InventoryItem } from '@garboard/contract/inventory';
import { usualEquipment } from '@garboard/trade/inventory';
import type { System } from '@garboard/trade/vocabulary';
import type { CallArgs } from '../../api/client.ts';

/** A piece of equipment as written in a form: everything text. */
export interface EquipmentDraft {
  name: string;
  system: System | '';
  count: string;
  place: string;
  maker: string;
  serialNumber: string;
  madeOn: string;
  expiresOn: string;
  note: string;
}

export const equipmentLabels: Readonly<Record<keyof EquipmentDraft, string>> = {
  name: 'What it is',
  system: 'System',
  count: 'How many',
  place: 'Where on board',
  maker: 'Maker',
  serialNumber: 'Serial number',
  madeOn: 'Made or fitted on',
  expiresOn: 'Good until',
  note: 'Note',
};

export function draftOf(item: InventoryItem | null): EquipmentDraft {
  return {
    name: item?.name ?? '',
    system: item?.system ?? '',
    count: String(item?.count ?? 1),
    place: item?.place ?? '',
    maker: item?.maker ?? '',
    serialNumber: item?.serialNumber ?? '',
    madeOn: item?.madeOn ?? '',
    expiresOn: item?.expiresOn ?? '',
    note: item?.note ?? '',
  };
}

/** What a form becomes when a kind is named: a usual one brings its system along. */
export function named(draft: EquipmentDraft, name: string): Partial<EquipmentDraft> {
  const usual = usualEquipment.find((kind) => kind.name.toLowerCase() === name.trim().toLowerCase());
  return usual && !draft.system ? { name, system: usual.system } : { name };
}

/** The form as the API wants it; an empty field is null. */
export function bodyOf(draft: EquipmentDraft): CallArgs<'createInventoryItem'>['body'] {
  const line = (text: string) => text.trim() || null;
  return {
    name: draft.name,
    // The server refuses an empty one in words, as it does an empty name.
    system: draft.system as System,
    count: Number(draft.count),
    place: line(draft.place),
    maker: line(draft.maker),
    serialNumber: line(draft.serialNumber),
    madeOn: line(draft.madeOn),
    expiresOn: line(draft.expiresOn),
    note: draft.note,
  };
}
