/** A field of a worksheet's form, read from its JSON Schema. */
export interface FieldSpec {
  key: string;
  field:
    | 'measure'
    | 'number'
    | 'count'
    | 'money'
    | 'currency'
    | 'choice'
    | 'yesNo'
    | 'words'
    | 'day'
    | 'rows'
    | 'grid';
  label: string;
  help: string | undefined;
  required: boolean;
  /** What is taken when nothing is given, in the form it would be given in. */
  fallback: unknown;
  /** Of a bare number; only of a measure. */
  unit: string;
  units: { key: string; symbol: string }[];
  choices: Record<string, string>;
  /** What one row is called, and its fields; only of rows. */
  each: string;
  columns: FieldSpec[];
  leastRows: number;
  mostRows: number;
}

interface Schema {
  title?: string;
  description?: string;
  default?: unknown;
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
  minItems?: number;
  maxItems?: number;
  'x-field'?: FieldSpec['field'];
  'x-unit'?: string;
  'x-units'?: FieldSpec['units'];
  'x-choices'?: { key: string; label: string }[];
  'x-each'?: string;
}

/** The fields of a form, in order, from the JSON Schema of its inputs. */
export function fieldsOf(schema: unknown): FieldSpec[] {
  const { properties = {}, required = [] } = schema as Schema;
  return Object.entries(properties).map(([key, property]) => ({
    key,
    field: property['x-field'] ?? 'words',
    label: property.title ?? key,
    help: property.description,
    required: required.includes(key),
    fallback: property.default,
    unit: property['x-unit'] ?? '',
    units: property['x-units'] ?? [],
    choices: Object.fromEntries((property['x-choices'] ?? []).map((choice) => [choice.key, choice.label])),
    each: property['x-each'] ?? 'row',
    columns: property.items ? fieldsOf(property.items) : [],
    leastRows: property.minItems ?? 0,
    mostRows: property.maxItems ?? 500,
  }));
}
