import type { Check } from '../../support/check.ts';

/** Published selection tables: rows of round-trip feet, columns of amperes, AWG size for 3%. */
const columns = [5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100];

interface Table {
  name: string;
  source: string;
  volts: number;
  areaBasis: 'SAE' | 'AWG';
  rows: string;
  /** Cells where the print and the formula with these areas differ: `feet/amperes` and what the formula gives. */
  differing: Record<string, string>;
}

const tables: Table[] = [
  {
    name: '24 V on SAE areas',
    source: 'cable catalogue 2024, p. 62 (docs.navico.com/view/362211770/62), 24 V, 3%',
    volts: 24,
    areaBasis: 'SAE',
    rows: `
      10 18 18 16 14 12 12 10 10 10 8 8 8 6
      15 18 16 14 12 12 10 10 8 6 6 6 6 6
      20 18 14 12 10 10 10 8 6 6 6 6 4 4
      25 16 12 12 10 10 8 6 6 6 4 4 4 4
      30 16 12 10 10 8 8 6 6 4 4 4 2 2
      40 14 10 10 8 6 6 6 4 4 2 2 2 2
      50 12 10 8 6 6 6 4 4 2 2 2 1 1
      60 12 10 8 6 6 4 4 2 2 1 1 1/0 1/0
      80 10 8 6 6 4 4 2 2 1 1/0 1/0 2/0 2/0
      100 10 6 6 4 4 2 2 1 1/0 2/0 2/0 3/0 3/0`,
    differing: { '15/60': '8' },
  },
  {
    name: '12 V on SAE areas',
    source: 'cable catalogue 2024, p. 62 (docs.navico.com/view/362211770/62), 12 V, 3%',
    volts: 12,
    areaBasis: 'SAE',
    rows: `
      10 18 14 12 10 10 8 6 6 6 6 6 4 4
      15 16 12 10 10 8 8 6 6 4 4 4 2 2
      20 14 10 10 8 6 6 6 4 4 2 2 2 2
      25 12 10 8 6 6 6 4 4 2 2 2 1 1
      40 10 8 6 6 4 4 2 2 1 1/0 1/0 2/0 2/0
      50 10 6 6 4 4 2 2 1 1/0 2/0 3/0 4/0 4/0`,
    differing: { '10/30': '10', '10/40': '8', '50/80': '2/0', '50/90': '3/0', '50/100': '3/0' },
  },
  {
    name: '12 V on true AWG areas',
    source: 'older selection table in “Boat Wiring” (scribd.com/document/552349902), 12 V, 3%',
    volts: 12,
    areaBasis: 'AWG',
    rows: `
      10 18 14 12 12 10 10 8 8 6 6 6 4 4
      15 16 12 10 10 8 8 6 6 4 4 4 2 2
      20 14 12 10 8 8 6 6 4 4 4 2 2 2
      25 14 10 8 8 6 6 4 4 2 2 2 1 1
      30 12 10 8 6 6 4 4 2 2 2 1 1/0 1/0
      40 12 8 6 6 4 4 2 2 1 1/0 1/0 2/0 2/0
      50 10 8 6 4 4 2 2 1 1/0 1/0 2/0 3/0 3/0
      60 10 6 6 4 2 2 1 1/0 2/0 2/0 3/0 3/0 4/0`,
    differing: { '15/90': '4', '30/90': '1', '40/70': '1', '60/15': '4' },
  },
];

function cells(table: Table) {
  return table.rows
    .trim()
    .split('\n')
    .flatMap((row) => {
      const [feet, ...sizes] = row.trim().split(/\s+/);
      if (sizes.length !== columns.length) throw new Error(`${table.name}: row ${feet}`);
      return sizes.map((size, i) => ({ feet: Number(feet), amperes: columns[i] as number, size }));
    });
}

/** One check of every cell. Where print and formula are known to differ, the formula's answer is expected. */
export const tableChecks: Check[] = tables.flatMap((table) =>
  cells(table).map(({ feet, amperes, size }): Check => {
    const ours = table.differing[`${feet}/${amperes}`];
    return {
      name: `${table.name}: ${feet} ft, ${amperes} A: ${size} AWG${ours ? ` in print, ${ours} by the formula` : ''}`,
      source: table.source,
      basis: ours ? 'computed' : 'printed',
      inputs: {
        voltage: table.volts,
        current: amperes,
        length: { value: feet, unit: 'ft' },
        lengthIs: 'round-trip',
        circuit: 'critical',
        method: 'circular-mils',
        areaBasis: table.areaBasis,
        engineSpace: false,
      },
      outputs: { sizeForDrop: `${ours ?? size} AWG` },
    };
  }),
);

/** The cells that differ, in words. */
export const differingCells: string[] = tables.map(
  (table) =>
    `${table.name}: ${cells(table).length} cells, ${Object.keys(table.differing).length} differ from the formula (${Object.entries(
      table.differing,
    )
      .map(([cell, ours]) => {
        const [feet, amperes] = cell.split('/');
        const size = cells(table).find((c) => c.feet === Number(feet) && c.amperes === Number(amperes))?.size;
        return `${feet} ft/${amperes} A prints ${size}, formula ${ours}`;
      })
      .join('; ')}).`,
);
