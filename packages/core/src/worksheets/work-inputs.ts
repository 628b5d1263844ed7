import { evaluate, InputsRefused, type WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import type { AnyWorksheet, InputProblem } from '@garboard/trade/worksheets/core/worksheet';
import { Refusal } from '../problems.ts';

/** Of a thousand wrong readings, people mend the first few and try again. */
const mostProblems = 50;
const mostInDetail = 5;

function refusal(problems: readonly InputProblem[]): Refusal {
  const errors = problems.slice(0, mostProblems).map(({ field, message }) => ({
    pointer: field === '' ? '/inputs' : `/inputs/${field}`,
    detail: message,
  }));
  const told = problems.slice(0, mostInDetail).map((p) => p.message);
  const rest = problems.length - told.length;
  const detail = [...told, ...(rest > 0 ? [`And ${rest} more.`] : [])].join(' ');
  return new Refusal('invalid-input', detail, errors);
}

/** Works a worksheet on what a caller gave. @throws Refusal `invalid-input` that points to each field at fault. */
export function workInputs(worksheet: AnyWorksheet, inputs: Record<string, unknown>): WorksheetResult {
  try {
    return evaluate(worksheet, inputs);
  } catch (error) {
    throw error instanceof InputsRefused ? refusal(error.problems) : error;
  }
}
