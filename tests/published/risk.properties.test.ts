import {
  levelOfChance,
  probabilityOrder,
  type RiskLevel,
  riskLevels,
  riskOf,
  severityOrder,
} from '@garboard/trade/risk-table';
import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { riskMatrix } from '@garboard/trade/worksheets/risk/risk-matrix';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const order = Object.keys(riskLevels) as RiskLevel[];
const severity = fc.constantFrom(...severityOrder);
const probability = fc.constantFrom(...probabilityOrder);

describe('the risk matrix', () => {
  it('holds 5 high, 4 serious, 8 medium, 3 low and 4 eliminated cells', () => {
    const counts: Record<string, number> = {};
    for (const s of severityOrder)
      for (const p of probabilityOrder) {
        const level = riskOf({ severity: s, probability: p });
        counts[level] = (counts[level] ?? 0) + 1;
      }
    expect(counts).toEqual({ high: 5, serious: 4, medium: 8, low: 3, eliminated: 4 });
  });

  it('never falls for a graver outcome or a likelier one', () => {
    fc.assert(
      fc.property(severity, probability, severity, probability, (s1, p1, s2, p2) => {
        const graver = severityOrder.indexOf(s1) <= severityOrder.indexOf(s2);
        const likelier = probabilityOrder.indexOf(p1) <= probabilityOrder.indexOf(p2);
        fc.pre(graver && likelier);
        const rank = (s: typeof s1, p: typeof p1) => order.indexOf(riskOf({ severity: s, probability: p }));
        expect(rank(s1, p1)).toBeLessThanOrEqual(rank(s2, p2));
      }),
    );
  });

  it('takes a greater chance for no rarer level', () => {
    const chance = fc.double({ min: 1e-9, max: 1, noNaN: true });
    fc.assert(
      fc.property(chance, chance, (a, b) => {
        const rank = (c: number) => probabilityOrder.indexOf(levelOfChance(c));
        expect(rank(Math.max(a, b))).toBeLessThanOrEqual(rank(Math.min(a, b)));
      }),
    );
  });

  it('marks both cells and says both codes for every pair', () => {
    fc.assert(
      fc.property(severity, probability, severity, probability, (s1, p1, s2, p2) => {
        const result = evaluate(riskMatrix, {
          severity: s1,
          probability: p1,
          severityAfter: s2,
          probabilityAfter: p2,
          hazardRemoved: true,
        });
        const [drawing] = result.drawings;
        expect(drawing?.description).toContain(String(result.outputs.code?.value));
        expect(drawing?.description).toContain(String(result.outputs.codeAfter?.value));
        expect(drawing?.svg.match(/stroke-width="3"/g)).toHaveLength(s1 === s2 && p1 === p2 ? 1 : 2);
        expect(result.reasons.length).toBe(2);
      }),
    );
  });
});
