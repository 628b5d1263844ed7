import { draftOf, inputsOf, missingFrom } from '@garboard/portal/pages/worksheets/form/draft';
import { fieldsOf } from '@garboard/portal/pages/worksheets/form/fieldSpec';
import { inputJsonSchema } from '@garboard/trade/worksheets/core/describe';
import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import { describe, expect, it } from 'vitest';
import { allChecks } from '../published/checks/all.ts';

describe.each(allChecks)('the form of $kind', ({ kind, checks }) => {
  const worksheet = findWorksheet(kind);
  if (!worksheet) throw new Error(kind);
  const fields = fieldsOf(inputJsonSchema(worksheet));

  it('asks for every input by a label, and begins with what must be given missing', () => {
    expect(fields.map((field) => field.key)).toEqual(Object.keys(worksheet.inputs));
    expect(fields.every((field) => field.label.length > 1)).toBe(true);
    const empty = draftOf(fields, null);
    // A list that may be empty is never missing.
    const required = fields.filter(
      (field) => field.required && !(field.field === 'rows' && field.leastRows === 0),
    );
    for (const { label } of required) {
      expect(missingFrom(fields, empty).some((words) => words.startsWith(label))).toBe(true);
    }
  });

  it('brings saved inputs back to the same result', () => {
    for (const check of checks) {
      if (check.refused) continue;
      const again = inputsOf(fields, JSON.parse(JSON.stringify(draftOf(fields, check.inputs))));
      expect(evaluate(worksheet, again), check.name).toEqual(evaluate(worksheet, check.inputs));
      expect(missingFrom(fields, draftOf(fields, check.inputs)), check.name).toEqual([]);
    }
  });
});

describe('what is typed', () => {
  const worksheet = findWorksheet('gas-leak-down');
  if (!worksheet) throw new Error('gas-leak-down');
  const fields = fieldsOf(inputJsonSchema(worksheet));

  it('may have a decimal comma or a true minus; what is no number goes as it stands, for the server to refuse', () => {
    const draft = draftOf(fields, null);
    const typed = (text: string) =>
      inputsOf(fields, { ...draft, startTemperature: { text, unit: 'degC' } }).startTemperature;
    expect(typed('12,5')).toEqual({ value: 12.5, unit: 'degC' });
    expect(typed('−3')).toEqual({ value: -3, unit: 'degC' });
    expect(typed('warm')).toEqual({ value: 'warm', unit: 'degC' });
    expect(typed('  ')).toBeUndefined();
  });
});
