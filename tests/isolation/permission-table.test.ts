import { readFile } from 'node:fs/promises';
import { type Route, routes } from '@garboard/contract/routes';
import { grantFor, permissions, type Role } from '@garboard/trade/permissions';
import { firmRoles, partyRoles } from '@garboard/trade/vocabulary';
import { expect, it } from 'vitest';
import { permissionTable } from './permission-table.ts';

it('DEVELOPERS.md prints the permission table as it is (npm run permission-table)', async () => {
  const text = await readFile(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');
  expect(text).toContain(permissionTable());
});

it('every route names a line of the table, and what is public needs no signing in', () => {
  const lines = new Set([...Object.keys(permissions), 'public', 'own-account']);
  for (const [name, route] of Object.entries(routes) as [string, Route][]) {
    expect({ name, known: lines.has(route.permission) }).toEqual({ name, known: true });
    expect({ name, open: route.access === 'public' }).toEqual({ name, open: route.permission === 'public' });
  }
});

it('names no unknown role, and an unknown role is granted nothing', () => {
  const known = new Set<string>([...firmRoles, ...partyRoles]);
  for (const [action, grants] of Object.entries(permissions)) {
    expect({ action, unknown: Object.keys(grants).filter((role) => !known.has(role)) }).toEqual({
      action,
      unknown: [],
    });
    for (const role of ['harbourmaster', 'constructor', '__proto__', '']) {
      expect(grantFor(action as keyof typeof permissions, role as Role)).toBeNull();
    }
  }
});
