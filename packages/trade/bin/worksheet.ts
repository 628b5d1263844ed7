// Works a worksheet without any server: npm run --silent worksheet -- <kind> '<inputs as JSON>'. Lists the kinds when
// none is named, shows a kind's inputs when none are given. Exit status 2 on bad input.
import { inputJsonSchema } from '../src/worksheets/core/describe.ts';
import { evaluate, InputsRefused } from '../src/worksheets/core/evaluate.ts';
import { findWorksheet, worksheets } from '../src/worksheets/registry.ts';

function refuse(...lines: string[]): never {
  for (const text of lines) process.stderr.write(`${text}\n`);
  process.exit(2);
}

function readJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refuse(
      `The inputs are not JSON: ${why}`,
      `Write them as '{"field": value, …}', in single quotes.`,
    );
  }
}

/** Enough to mend a list that is wrong throughout. */
const mostTold = 20;

const print = (value: unknown) => process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);

const [kind, given, ...more] = process.argv.slice(2);
if (more.length > 0) refuse('Give one kind and one JSON text, the JSON in single quotes.');
if (kind === undefined) {
  for (const { kind: key, title } of worksheets) process.stdout.write(`${key.padEnd(24)} ${title}\n`);
} else {
  const worksheet = findWorksheet(kind);
  if (!worksheet) refuse(`There is no worksheet “${kind}”. npm run --silent worksheet lists the kinds.`);
  if (given === undefined) {
    const { title, purpose } = worksheet;
    print({ kind, title, purpose, inputs: inputJsonSchema(worksheet) });
  } else {
    try {
      print(evaluate(worksheet, readJson(given)));
    } catch (error) {
      if (!(error instanceof InputsRefused)) throw error;
      const told = error.problems.slice(0, mostTold).map((problem) => `${problem.field}: ${problem.message}`);
      const more = error.problems.length - told.length;
      refuse(...told, ...(more > 0 ? [`and ${more} more`] : []));
    }
  }
}
