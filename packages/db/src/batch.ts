import { type PoolClient, types } from 'pg';
import { prepareValue } from 'pg/lib/utils.js';

/** A statement of a batch. With a name, its connection prepares it once and keeps it. */
export interface Statement {
  text: string;
  values: readonly unknown[];
  name?: string | undefined;
}

/** What is used of a connection of `pg`: the calls that its own cursors make, too. */
interface Wire {
  stream: { cork(): void; uncork(): void };
  parse(statement: { name: string; text: string }): void;
  bind(bound: { statement: string; values: readonly (string | Buffer | null)[] }): void;
  describe(what: { type: 'P'; name: '' }): void;
  execute(portal: { portal: '' }): void;
  sync(): void;
}

interface Column {
  name: string;
  parse(text: string): unknown;
}
type Row = Record<string, unknown>;
type Done = (error: Error | null, rows: Row[][]) => void;

/** The columns of the statements that each connection keeps. */
const prepared = new WeakMap<Wire, Map<string, readonly Column[]>>();

/**
 * Statements that travel together, in one message there and one back, as one transaction that ends with the last
 * (PostgreSQL, Frontend/Backend Protocol, Pipelining: everything before a Sync). Of a statement that the connection
 * keeps, neither its text nor the description of its columns is sent again.
 */
class Batch {
  #at = 0;
  readonly #rows: Row[][];
  readonly #columns: (readonly Column[])[] = [];
  #kept: Map<string, readonly Column[]> = new Map();

  constructor(
    readonly statements: readonly Statement[],
    private readonly done: Done,
  ) {
    this.#rows = statements.map(() => []);
  }

  submit(wire: Wire): Error | null {
    let bound: (string | Buffer | null)[][];
    try {
      // Before anything is written: a value that can't be sent would leave half a message on the connection.
      bound = this.statements.map(({ values }) => values.map(prepareValue));
    } catch (error) {
      return error as Error;
    }
    const known = prepared.get(wire);
    if (known) this.#kept = known;
    else prepared.set(wire, this.#kept);
    const parsed = new Set<string>();
    wire.stream.cork();
    try {
      for (const [at, { name = '', text }] of this.statements.entries()) {
        const columns = this.#kept.get(name);
        if (columns) this.#columns[at] = columns;
        else if (!parsed.has(name)) wire.parse({ name, text });
        if (name) parsed.add(name);
        wire.bind({ statement: name, values: bound[at] ?? [] });
        if (!columns) wire.describe({ type: 'P', name: '' });
        wire.execute({ portal: '' });
      }
      wire.sync();
    } finally {
      wire.stream.uncork();
    }
    return null;
  }

  handleRowDescription({ fields }: { fields: { name: string; dataTypeID: number }[] }): void {
    this.#columns[this.#at] = fields.map(({ name, dataTypeID }) => ({
      name,
      parse: types.getTypeParser(dataTypeID, 'text'),
    }));
  }

  handleDataRow({ fields }: { fields: (string | null)[] }): void {
    const row: Row = {};
    const columns = this.#columns[this.#at] ?? [];
    for (let i = 0; i < columns.length; i += 1) {
      const { name, parse } = columns[i] as Column;
      const text = fields[i];
      row[name] = text === null || text === undefined ? null : parse(text);
    }
    this.#rows[this.#at]?.push(row);
  }

  handleCommandComplete(): void {
    this.#at += 1;
  }

  handleReadyForQuery(): void {
    for (const [at, { name }] of this.statements.entries())
      if (name) this.#kept.set(name, this.#columns[at] ?? []);
    this.done(null, this.#rows);
  }

  handleError(error: Error): void {
    this.done(error, []);
  }
}

/**
 * Runs statements on a connection as one batch, and gives it back.
 *
 * @returns the rows of each statement. @throws the error of the first that fails; what was prepared with it is not known
 *   then, so its connection is given up
 */
export function runBatch(client: PoolClient, statements: readonly Statement[]): Promise<Row[][]> {
  return new Promise((resolve, reject) => {
    const done: Done = (error, rows) => {
      client.release(error ?? undefined);
      if (error) reject(error);
      else resolve(rows);
    };
    client.query(new Batch(statements, done) as never);
  });
}
