import { isDeepStrictEqual } from 'node:util';
import serialiserOf, { type AnySchema } from 'fast-json-stringify';
import type { FastifySerializerCompiler } from 'fastify/types/schema.js';
import { z } from 'zod';

type Node = Record<string, unknown>;
const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null;

/** What shapes an answer; the rest of a schema tells what its values are, which handlers see to. */
const shaping = ['type', 'const', 'enum', 'oneOf', 'anyOf', 'required', 'nullable'] as const;

/**
 * A schema as the compiler takes it best: references in place, `null` as a mark beside a type and not as a choice of
 * two, which it would have to try one after the other.
 */
function plain(node: Node, definitions: Node): Node {
  const name = typeof node.$ref === 'string' ? node.$ref.slice('#/$defs/'.length) : undefined;
  if (name !== undefined) return plain(definitions[name] as Node, definitions);
  const choices = Array.isArray(node.anyOf) ? (node.anyOf as Node[]) : [];
  const others = choices.filter((choice) => choice.type !== 'null');
  const [only] = others;
  if (only && others.length === 1) return { ...plain(only, definitions), nullable: true };
  const kept: Node = Object.fromEntries(shaping.flatMap((key) => (key in node ? [[key, node[key]]] : [])));
  const inner = (value: unknown) => (isNode(value) ? plain(value, definitions) : value);
  for (const key of ['oneOf', 'anyOf'] as const) {
    if (Array.isArray(node[key])) kept[key] = node[key].map(inner);
  }
  if (isNode(node.properties)) {
    kept.properties = Object.fromEntries(Object.entries(node.properties).map(([k, v]) => [k, inner(v)]));
  }
  if ('items' in node) kept.items = inner(node.items);
  if (isNode(node.additionalProperties)) kept.additionalProperties = inner(node.additionalProperties);
  return kept;
}

type Serialise = (answer: unknown) => string;
const compiled = new WeakMap<z.ZodType, Serialise>();

/**
 * Writes answers of a schema as JSON, by a function compiled for it; whatever the schema doesn't name stays out.
 * Documents of one kind or another are written by their schema itself: the compiler would hold each against all kinds
 * by rules that aren't ours, and their fields are to come in the order of the file that the PDF carries.
 */
export function serialiserFor(schema: z.ZodType): Serialise {
  const known = compiled.get(schema);
  if (known) return known;
  const { $defs, ...root } = z.toJSONSchema(schema, { io: 'input' });
  const made: Serialise =
    'oneOf' in root
      ? (answer) => JSON.stringify(z.encode(schema, answer))
      : serialiserOf(plain(root, $defs ?? {}) as AnySchema);
  compiled.set(schema, made);
  return made;
}

/**
 * How Fastify writes the answers of our routes. Each function is made when its route first answers, so that starting
 * takes no longer.
 *
 * @param checked whether each answer is first held against its schema, and one that doesn't fit fails;
 *   for tests, since it takes many times as long as writing it
 */
export const serialiserCompiler =
  (checked: boolean): FastifySerializerCompiler<unknown> =>
  ({ schema, url }) => {
    if (!(schema instanceof z.ZodType)) throw new Error(`The answer of ${url} has no schema of ours.`);
    return (answer: unknown) => {
      const written = serialiserFor(schema)(answer);
      if (checked) {
        const asDeclared = JSON.parse(JSON.stringify(z.encode(schema, answer)));
        if (!isDeepStrictEqual(JSON.parse(written), asDeclared)) {
          throw new Error(`Of ${url} was written ${written}, not ${JSON.stringify(asDeclared)}`);
        }
      }
      return written;
    };
  };
