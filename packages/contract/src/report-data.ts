import { z } from 'zod';
import { type ReportSnapshot, reportSnapshot } from './report-snapshot.ts';

/** The name under which a document's data is attached to its PDF. */
export const reportDataFileName = 'garboard-report.json';
export const reportDataSchemaPath = '/v1/schemas/report-data.json';

/**
 * A document's data as the text that is attached to its PDF: always the same bytes for the same snapshot, so that
 * its hash can be printed in the document.
 */
export const reportDataText = (snapshot: ReportSnapshot): string => `${JSON.stringify(snapshot, null, 1)}\n`;

/**
 * The JSON Schema (draft 2020-12) of that data, made from what it is checked against.
 *
 * @param publicUrl address of the installation, without a slash at the end.
 */
export function reportDataSchema(publicUrl: string): Record<string, unknown> {
  // As it may come in: fields that older documents don't have may be missing, newer ones may be there.
  const { $schema, ...schema } = z.toJSONSchema(reportSnapshot, { io: 'input', target: 'draft-2020-12' });
  return {
    $schema,
    $id: `${publicUrl}${reportDataSchemaPath}`,
    title: 'A survey report or letter as data',
    description:
      'What an issued document says, frozen when it was asked for. Times are UTC, sizes metres and kilograms, ' +
      'money minor units of the currency. Fields may be added; `schemaVersion` rises when one changes its meaning.',
    ...schema,
  };
}
