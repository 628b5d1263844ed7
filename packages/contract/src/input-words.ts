import type { z } from 'zod';

const kinds: Record<string, string> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'an object of fields',
  record: 'an object of fields',
  array: 'a list',
  null: 'null',
};

const formats: Record<string, string> = {
  uuid: 'Give the id as it was answered, a UUID.',
  date: 'Give a day of the calendar as YYYY-MM-DD.',
  datetime: 'Give an instant in UTC, such as 2026-05-04T10:20:00Z.',
  email: 'Write an e-mail address such as name@harbour.example.',
  url: 'Give a whole address, such as https://boatyard.example/.',
  base64: 'Give the bytes in Base64 (RFC 4648).',
};

/** How many names a sentence lists, and how much of each it repeats of what was sent. */
const [mostNames, longestName] = [5, 40];

function unknownNames(keys: readonly string[]): string {
  const shown = keys.slice(0, mostNames).map((key) => {
    const plain = [...key.replace(/\p{C}/gu, '')];
    return `“${plain.slice(0, longestName).join('')}${plain.length > longestName ? '…' : ''}”`;
  });
  const rest = keys.length - shown.length;
  const names = [...shown, ...(rest > 0 ? [`${rest} more`] : [])].join(', ');
  return keys.length === 1
    ? `There is no field ${names} here; leave it out.`
    : `There are no fields ${names} here; leave them out.`;
}

function outOfBounds(
  issue: z.core.$ZodIssueTooBig | z.core.$ZodIssueTooSmall | z.core.$ZodRawIssue,
  word: 'At least' | 'At most',
): string {
  const { origin, minimum, maximum, inclusive, exact } = issue as {
    origin?: string;
    minimum?: number;
    maximum?: number;
    inclusive?: boolean;
    exact?: boolean;
  };
  const bound = word === 'At least' ? minimum : maximum;
  const how = exact
    ? 'Exactly'
    : inclusive === false
      ? word === 'At least'
        ? 'More than'
        : 'Less than'
      : word;
  const unit = { string: 'characters', array: 'items', record: 'fields' }[origin ?? ''];
  return unit ? `${how} ${bound} ${unit} are accepted here.` : `${how} ${bound} is accepted here.`;
}

/** What is wrong with an input whose schema doesn’t say so itself, and what to give instead; for `z.config`. */
export function inputWords(issue: z.core.$ZodRawIssue): string {
  switch (issue.code) {
    case 'invalid_type': {
      const wanted = kinds[String(issue.expected)] ?? 'something else';
      return issue.input === undefined ? `This is missing: give ${wanted}.` : `Give ${wanted} here.`;
    }
    case 'invalid_value': {
      const [only, ...others] = issue.values as unknown[];
      return others.length === 0
        ? `Only ${only} is accepted here.`
        : `Give one of: ${[only, ...others].join(', ')}.`;
    }
    case 'invalid_format':
      return formats[String(issue.format)] ?? 'This is not written in the form that is accepted here.';
    case 'too_small':
      return outOfBounds(issue, 'At least');
    case 'too_big':
      return outOfBounds(issue, 'At most');
    case 'unrecognized_keys':
      return unknownNames(issue.keys as string[]);
    case 'invalid_key':
      return 'A field has a name that is not accepted here.';
    default:
      return 'This is not in a form that is accepted here.';
  }
}
