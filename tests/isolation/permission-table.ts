import { type Grant, grantFor, permissions, type Role } from '@garboard/trade/permissions';
import { firmRoles, partyRoles } from '@garboard/trade/vocabulary';

export const startMark = '<!-- permissions: made by tests/isolation/write-permission-table.ts -->';
export const endMark = '<!-- /permissions -->';

const roles: readonly Role[] = [...firmRoles, ...partyRoles];
const words: Record<Grant, string> = {
  yes: 'yes',
  released: 'released',
  assigned: 'assigned',
  client: 'pays',
  decides: 'decides',
};

/** Cells padded to one width a column, as Biome and people like them. */
function rows(cells: readonly string[][]): string {
  const widths = (cells[0] ?? []).map((_, column) =>
    Math.max(...cells.map((row) => row[column]?.length ?? 0)),
  );
  const line = (row: readonly string[]) =>
    `| ${row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join(' | ')} |`;
  const [head = [], ...rest] = cells;
  const rule = `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`;
  return [line(head), rule, ...rest.map(line)].join('\n');
}

/** The permission table as DEVELOPERS.md prints it. */
export function permissionTable(): string {
  const actions = Object.keys(permissions).sort() as (keyof typeof permissions)[];
  const body = actions.map((action) => [
    `\`${action}\``,
    ...roles.map((role) => {
      const grant = grantFor(action, role);
      return grant ? words[grant] : '';
    }),
  ]);
  return `${startMark}\n\n${rows([['Action', ...roles], ...body])}\n\n${endMark}`;
}
