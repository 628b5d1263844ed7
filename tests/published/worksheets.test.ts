import { worksheets } from '@garboard/trade/worksheets/registry';
import { describe, expect, it } from 'vitest';
import { allChecks } from './checks/all.ts';
import { runCheck } from './support/run-check.ts';

describe.each(allChecks)('$kind against its sources', ({ kind, checks }) => {
  it.each(checks)('$basis: $name', (check) => runCheck(kind, check));
});

describe('the set of checks', () => {
  it('covers every worksheet once, in order', () => {
    expect(allChecks.map((c) => c.kind)).toEqual(worksheets.map((w) => w.kind));
  });

  it.each(allChecks)(
    '$kind: four checks of values and two at the limit of a band, each with its source',
    (checked) => {
      const edges = checked.checks.filter((check) => check.basis === 'edge');
      expect(edges.length).toBeGreaterThanOrEqual(2);
      expect(checked.checks.length - edges.length).toBeGreaterThanOrEqual(4);
      expect(checked.checks.every((check) => check.source.length > 5)).toBe(true);
    },
  );
});
