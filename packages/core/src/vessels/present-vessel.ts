import type { Vessel } from '@garboard/contract/vessels';
import type { Prisma } from '@garboard/db/database';

type VesselRow = Prisma.VesselGetPayload<object>;

export function presentVessel(row: VesselRow): Vessel {
  return {
    ...row,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
}
