import type { Vessel } from '@garboard/contract/vessels';
import type { Prisma } from '@garboard/db/database';
import type { HullMaterial, Propulsion } from '@garboard/trade/vocabulary';

type VesselRow = Prisma.VesselGetPayload<object>;

export function presentVessel(row: VesselRow): Vessel {
  return {
    ...row,
    hullMaterial: row.hullMaterial as HullMaterial | null,
    propulsion: row.propulsion as Propulsion | null,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
}
