import type { SnapshotEquipment } from '@garboard/contract/report-snapshot';
import { type System, systems } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import { dayOf } from './present-inventory-item.ts';

const place = new Map<string, number>(systems.map((system, index) => [system, index]));

/** A survey's equipment as the report prints it: by system in the usual order, within one as it was recorded. */
export async function freezeInventory(ctx: Ctx, surveyId: string): Promise<SnapshotEquipment[]> {
  const rows = await ctx.tx.inventoryItem.findMany({ where: { surveyId }, orderBy: { id: 'asc' } });
  return rows
    .sort((a, b) => (place.get(a.system) ?? 0) - (place.get(b.system) ?? 0))
    .map((row) => ({
      id: row.id,
      system: row.system as System,
      name: row.name,
      maker: row.maker,
      serialNumber: row.serialNumber,
      place: row.place,
      count: row.count,
      madeOn: dayOf(row.madeOn),
      expiresOn: dayOf(row.expiresOn),
      note: row.note,
    }));
}
