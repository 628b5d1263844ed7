import { z } from 'zod';
import { id, instant, line, pageQuery, sha256, text, versioned } from './common.ts';

export const imageSizes = ['thumb', 'screen', 'print', 'original'] as const;
export type ImageSize = (typeof imageSizes)[number];

const share = z.number().min(0).max(1);
const point = z.strictObject({ x: share, y: share });
const tone = z.enum(['signal', 'ink']).optional().meta({
  description: 'Colour; unless said otherwise lines are in the signal colour, plates of labels in ink',
});
/** Marks drawn over a photo; coordinates are shares of the upright picture's width and height. */
export const mark = z
  .discriminatedUnion('shape', [
    z.strictObject({ shape: z.literal('arrow'), from: point, to: point, tone }),
    z.strictObject({ shape: z.literal('line'), from: point, to: point, tone }),
    z.strictObject({ shape: z.literal('box'), from: point, to: point, tone }),
    z.strictObject({ shape: z.literal('blur'), from: point, to: point }),
    z.strictObject({ shape: z.literal('ring'), centre: point, radius: share, tone }),
    z.strictObject({ shape: z.literal('label'), at: point, text: line(80), tone }),
  ])
  .meta({ id: 'Mark' });
export type Mark = z.infer<typeof mark>;

const image = z
  .string()
  .nullable()
  .meta({ description: 'Address of this size; null until it has been made' });

const images = z.object({ thumb: image, screen: image, print: image });
const thumbSize = {
  thumbWidth: z.int().meta({ description: 'Pixels of the thumbnail, known before it is made' }),
  thumbHeight: z.int(),
};

/** The earlier photo of a pair, as the later one shows it. */
export const beforePhoto = z
  .object({
    id,
    surveyId: id,
    surveyNumber: z.string(),
    takenAt: instant.nullable(),
    caption: z.string(),
    width: z.int(),
    height: z.int(),
    images,
    ...thumbSize,
  })
  .meta({ id: 'BeforePhoto' });

export const photo = z
  .object({
    id,
    surveyId: id,
    sha256,
    bytes: z.int(),
    mediaType: z.string(),
    fileName: z.string(),
    width: z.int().meta({ description: 'Pixels, upright' }),
    height: z.int().meta({ description: 'Pixels, upright' }),
    takenAt: instant.nullable(),
    caption: z.string(),
    marks: z.array(mark),
    quarterTurns: z.int(),
    state: z.enum(['processing', 'ready', 'failed']),
    problem: z.string().nullable().meta({ description: 'Why its sizes could not be made, when it failed' }),
    images,
    ...thumbSize,
    dhash: z
      .string()
      .regex(/^[0-9a-f]{16}$/)
      .nullable()
      .meta({
        description: '64-bit difference hash of the upright picture without marks; null until derived',
      }),
    likeness: id.nullable().meta({
      description:
        'The first photo, by capture time, of the group of near-duplicates that this one belongs to (itself for ' +
        'the first); null when it stands alone',
    }),
    beforePhotoId: id.nullable(),
    before: beforePhoto
      .nullable()
      .meta({ description: 'The earlier photo of the same boat that it is to be compared with' }),
    createdAt: instant,
    ...versioned,
  })
  .meta({ id: 'Photo' });
export type Photo = z.infer<typeof photo>;

export const photoPatch = z
  .strictObject({
    caption: text(500),
    marks: z.array(mark).max(60),
    quarterTurns: z.int().min(0).max(3).meta({ description: 'Turns of 90 degrees clockwise, 0 to 3' }),
    beforePhotoId: id.nullable().meta({
      description: 'A photo of the same boat, of this survey or an earlier one; null parts the pair',
    }),
  })
  .partial();

export const refusedFile = z.object({ name: z.string(), problem: z.string() }).meta({ id: 'RefusedFile' });
export const photosUploaded = z
  .object({ items: z.array(photo), refused: z.array(refusedFile) })
  .meta({ id: 'PhotosUploaded' });
/** A whole survey’s photos fit on one page, so that a grid can be laid out at once. */
export const photoQuery = pageQuery.extend({
  limit: z.coerce.number().int().min(1).max(500).default(50).meta({ description: 'How many items at most' }),
});
export const imageQuery = z.object({
  size: z.enum(imageSizes).default('screen'),
  v: z
    .string()
    .max(80)
    .optional()
    .meta({ description: 'Content hash; lets caches keep the answer for ever' }),
});
