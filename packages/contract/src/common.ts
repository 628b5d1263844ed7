import { z } from 'zod';
import { inputWords } from './input-words.ts';

// What a schema doesn't say in its own words is said in ours: here, since every schema of the contract is built on these.
z.config({ customError: inputWords });

/** A UUID version 7, as every record of ours is named. */
export const id = z
  .uuid()
  .meta({ description: 'A UUID (version 7)', example: '0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f' });

/** The id of a record that its client makes, so that a create sent twice makes one. */
export const clientId = z.uuidv7('Make the id as a UUID of version 7.').meta({
  description: 'A UUID (version 7) made by the client: sent again, it answers the record already kept',
});

/** Years begin with 1: the database knows no year 0. */
const hasYear = (s: string) => !s.startsWith('0000');
const noYear = 'There is no year 0; give the year with four digits.';

/** An instant in UTC. */
export const instant = z.iso
  .datetime()
  .refine(hasYear, noYear)
  .meta({ description: 'An instant in UTC, ISO 8601' });

/** A calendar day without a time. */
export const day = z.iso
  .date()
  .refine(hasYear, noYear)
  .meta({ description: 'A calendar day, YYYY-MM-DD', example: '2026-05-04' });

/** The content hash under which a file is kept. */
export const sha256 = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .meta({ description: 'SHA-256 of the file, 64 hexadecimal digits' });

// Tab and line feed are the only control characters a text needs; PostgreSQL refuses NUL outright. Half a character
// could not be kept as it came, and what forces the direction of writing makes a name read as another.
const forbidden = /(?![\n\t])\p{Cc}|\p{Cs}|[\u202d\u202e]/u;

function plain(max: number) {
  return z
    .string()
    .overwrite((s) => s.replace(/\r\n?/g, '\n').normalize('NFC').trim())
    .max(max, `At most ${max} characters.`)
    .refine((s) => !forbidden.test(s), 'Control characters are not allowed; write plain text.');
}

/** Plain text of several paragraphs; may be empty. */
export const text = (max: number) => plain(max);

/** One line of plain text that says something. */
export const line = (max: number) =>
  plain(max)
    .min(1, 'Must not be empty.')
    .refine((s) => !s.includes('\n'), 'Must be a single line.');

/** One line of plain text, or nothing. */
export const optionalLine = (max: number) =>
  plain(max)
    .refine((s) => !s.includes('\n'), 'Must be a single line.')
    .nullable();

export const email = z
  .email('Write an e-mail address such as name@harbour.example.')
  .max(254)
  .overwrite((s) => s.trim().toLowerCase());

export const name = line(120);

/** An IANA time zone that this runtime knows. */
export const timeZone = z
  .string()
  .max(64)
  .refine((zone) => {
    try {
      new Intl.DateTimeFormat('en', { timeZone: zone });
      return true;
    } catch {
      return false;
    }
  }, 'Must be an IANA time zone such as Europe/Lisbon.')
  .meta({ example: 'Europe/Lisbon' });

export const idParams = z.object({ id });

export const pageQuery = z.object({
  limit: z.coerce.number().int().min(1).max(200).default(50).meta({ description: 'How many items at most' }),
  cursor: z
    .string()
    .max(400)
    .optional()
    .meta({ description: 'Where to go on: the `next` of the page before' }),
});

/** A page of a list: `next` is the cursor of the page after, or null on the last. */
export const page = <T extends z.ZodType>(item: T) =>
  z.object({ items: z.array(item), next: z.string().nullable() });

/** Who did something, as others may see it. */
/** Of lists whose pages come at once however long they are: how many match is counted when it is asked for. */
export const wantsTotal = z
  .enum(['yes', 'no'])
  .default('no')
  .meta({ description: 'Whether to count all that match, which takes the longer the more there are' });
export const totalAsked = z
  .int()
  .nullable()
  .meta({ description: 'How many match, on all pages together; null unless it was asked for' });

export const actorRef = z.object({ name: z.string(), role: z.string() }).meta({ id: 'ActorRef' });

export const versioned = { version: z.int().meta({ description: 'Rises with each edit; also the ETag' }) };
