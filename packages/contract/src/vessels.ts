import { z } from 'zod';
import { id, instant, line, optionalLine, pageQuery, versioned } from './common.ts';

const metres = (max: number) => z.number().positive().max(max).nullable();

const fields = {
  name: line(120),
  hullNumber: optionalLine(40).meta({ description: 'Hull identification number' }),
  officialNumber: optionalLine(40),
  builder: optionalLine(120),
  model: optionalLine(120),
  yearBuilt: z.int().min(1800).max(2100).nullable(),
  hullMaterial: optionalLine(80).meta({ description: 'A usual key such as grp or steel, or in words' }),
  propulsion: optionalLine(80).meta({ description: 'A usual key such as inboard-diesel, or in words' }),
  lengthOverallM: metres(200).meta({ description: 'Length overall in metres' }),
  beamM: metres(60).meta({ description: 'Beam in metres' }),
  draftM: metres(30).meta({ description: 'Draught in metres' }),
  displacementKg: z
    .number()
    .positive()
    .max(20_000_000)
    .nullable()
    .meta({ description: 'Displacement in kilograms' }),
  homePort: optionalLine(120),
  flag: optionalLine(60),
};

export const vesselPatch = z.strictObject(fields).partial();
export const vesselCreate = z.strictObject({
  ...vesselPatch.shape,
  name: fields.name,
  firmId: id.optional().meta({ description: 'Needed only by people who belong to several firms' }),
});
export const vessel = z
  .object({
    id,
    firmId: id,
    name: z.string(),
    hullNumber: z.string().nullable(),
    officialNumber: z.string().nullable(),
    builder: z.string().nullable(),
    model: z.string().nullable(),
    yearBuilt: z.int().nullable(),
    hullMaterial: z.string().nullable(),
    propulsion: z.string().nullable(),
    lengthOverallM: z.number().nullable(),
    beamM: z.number().nullable(),
    draftM: z.number().nullable(),
    displacementKg: z.number().nullable(),
    homePort: z.string().nullable(),
    flag: z.string().nullable(),
    createdAt: instant,
    updatedAt: instant,
    ...versioned,
  })
  .meta({ id: 'Vessel' });
export const vesselQuery = pageQuery.extend({ q: z.string().max(100).optional() });
export type Vessel = z.infer<typeof vessel>;
