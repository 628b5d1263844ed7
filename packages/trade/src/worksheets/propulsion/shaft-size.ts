import { measured, number, said } from '../core/outputs.ts';
import { Quantity } from '../core/quantity.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type InputProblem } from '../core/worksheet.ts';
import { type ShaftSizeValues, shaftSizeInputs } from './shaft-size-inputs.ts';
import {
  leastPrintedFactor,
  nextStock,
  quickRuleDivisor,
  services,
  stockInches,
  stockMillimetres,
} from './shaft-size-table.ts';
import { diameterForStress, longestSpan, shaftMaterialOf, shaftTorque, torsionalStress } from './shafting.ts';

/** Share of the flywheel's rated power that reaches the shaft. */
const powerThroughGear = 0.96;

function refuse(v: ShaftSizeValues): InputProblem[] {
  return v.material === 'other' && !v.yieldStrength
    ? [
        {
          field: 'yieldStrength',
          message: 'Give the yield strength in shear of a material that is not in the list.',
        },
      ]
    : [];
}

/** Power kW, speed rpm, torque N·m, yield MPa, diameters mm, spans ft. */
function sizeOf(v: ShaftSizeValues) {
  const power = v.power.in('kW') * (v.powerAt === 'flywheel' ? powerThroughGear : 1);
  const rpm = v.engineSpeed.in('rpm') / v.reduction;
  const torque = shaftTorque(power, rpm);
  const material = v.material === 'other' ? undefined : shaftMaterialOf(v.material);
  const yieldMpa = v.yieldStrength
    ? v.yieldStrength.in('MPa')
    : new Quantity(material?.yieldPsi ?? Number.NaN, 'psi').in('MPa');
  const factor = v.factor ?? services[v.service].factor;
  const least = settle(diameterForStress(torque, yieldMpa / factor));
  const fitted = v.fittedDiameter?.in('mm');
  const sized = fitted ?? least;
  const stock =
    v.sizes === 'metric'
      ? nextStock(least, stockMillimetres)
      : nextStock(new Quantity(least, 'mm').in('in'), stockInches);
  return {
    power,
    rpm,
    torque,
    yieldMpa,
    factor,
    least,
    stock: stock === undefined ? undefined : new Quantity(stock, v.sizes === 'metric' ? 'mm' : 'in'),
    ...(fitted === undefined
      ? {}
      : { fitted, fittedFactor: settle(yieldMpa / torsionalStress(torque, fitted)) }),
    ...(material ? { span: longestSpan(new Quantity(sized, 'mm').in('in'), rpm, material) } : {}),
    smallBar: !v.yieldStrength && material?.upToIn !== undefined ? material.upToIn : undefined,
  };
}

type Size = ReturnType<typeof sizeOf>;

function judge(v: ShaftSizeValues, s: Size): Judgement[] {
  const judgements: Judgement[] = [];
  const text = (mm: number) => new Quantity(mm, 'mm').to(v.sizes === 'metric' ? 'mm' : 'in').text(4);
  const asked = `a factor of safety of ${formatNumber(s.factor)}`;
  if (s.fitted === undefined || s.fittedFactor === undefined) {
    const reason = `No fitted diameter was given, so nothing is judged; at least ${text(s.least)} is needed for ${asked}.`;
    judgements.push({ verdict: 'indeterminate', reason });
  } else {
    const has = `The ${text(s.fitted)} shaft has a factor of safety of ${formatNumber(s.fittedFactor, 3)} at rated torque`;
    const lowest = Math.min(leastPrintedFactor, s.factor);
    if (s.fittedFactor < lowest) {
      const reason = `${has}, below the ${formatNumber(lowest)} of even the lightest service; ${text(s.least)} is needed for ${asked}.`;
      judgements.push({ verdict: 'unsatisfactory', reason });
    } else if (s.fittedFactor < s.factor) {
      const reason = `${has}; ${asked} is asked for this service, which needs ${text(s.least)}.`;
      judgements.push({ verdict: 'attention', reason });
    } else {
      judgements.push({ verdict: 'satisfactory', reason: `${has}; ${asked} is asked.` });
    }
  }
  const inches = new Quantity(s.fitted ?? s.least, 'mm').in('in');
  if (s.smallBar !== undefined && inches > s.smallBar) {
    const reason = `The yield strength taken for this material is that of bars up to ${formatNumber(s.smallBar)} in; larger bars are weaker. Use the bar’s certificate.`;
    judgements.push({ verdict: 'attention', reason });
  }
  if (v.bearingSpacing && s.span !== undefined) {
    const spacing = v.bearingSpacing.in('ft');
    const unit = v.bearingSpacing.unit;
    const span = new Quantity(s.span, 'ft').to(unit).text(3);
    judgements.push(
      spacing > s.span
        ? {
            verdict: 'attention',
            reason: `The bearings stand ${v.bearingSpacing.text(3)} apart, more than the ${span} this shaft should span at its speed; it may whip.`,
          }
        : {
            verdict: 'satisfactory',
            reason: `The bearings stand ${v.bearingSpacing.text(3)} apart; ${span} is the longest span for this shaft at its speed.`,
          },
    );
  }
  return judgements;
}

function workingOf(v: ShaftSizeValues, s: Size): string[] {
  const f = (value: number) => formatNumber(value, 4);
  const lines: string[] = [];
  const metric = v.power.unit === 'kW';
  const power = new Quantity(s.power, 'kW').in(metric ? 'kW' : 'hp');
  const powerUnit = metric ? 'kW' : 'hp';
  if (v.powerAt === 'flywheel') {
    lines.push(
      line('Power at the shaft', '0.96 · P', `0.96 × ${v.power.text()}`, `${f(power)} ${powerUnit}`),
    );
  }
  lines.push(
    line(
      'Shaft speed',
      'engine / reduction',
      `${f(v.engineSpeed.in('rpm'))} / ${f(v.reduction)}`,
      `${f(s.rpm)} rpm`,
    ),
  );
  if (metric) {
    lines.push(
      line('Torque', 'T = 9,549 · P / N', `9,549 × ${f(power)} / ${f(s.rpm)}`, `${f(s.torque)} N·m`),
      line(
        'Least diameter',
        'D = 3651 · ∛(P · SF / (St · N)), St in kPa',
        `3651 × ∛(${f(power)} × ${f(s.factor)} / (${f(s.yieldMpa * 1000)} × ${f(s.rpm)}))`,
        `${f(s.least)} mm`,
      ),
    );
  } else {
    const lbfIn = new Quantity(s.torque, 'N m').in('lbf in');
    const psi = new Quantity(s.yieldMpa, 'MPa').in('psi');
    lines.push(
      line('Torque', 'T = 63,025 · P / N', `63,025 × ${f(power)} / ${f(s.rpm)}`, `${f(lbfIn)} lbf·in`),
      line(
        'Least diameter',
        'D = ∛(321,000 · P · SF / (St · N))',
        `∛(321,000 × ${f(power)} × ${f(s.factor)} / (${f(psi)} × ${f(s.rpm)}))`,
        `${f(new Quantity(s.least, 'mm').in('in'))} in`,
      ),
    );
  }
  if (s.fitted !== undefined && s.fittedFactor !== undefined) {
    lines.push(
      line(
        'Factor fitted',
        'SF · (d / D)³',
        `${f(s.factor)} × (${formatNumber(s.fitted, 5)} / ${formatNumber(s.least, 5)})³`,
        f(s.fittedFactor),
      ),
    );
  }
  if (s.span !== undefined && v.material !== 'other') {
    const { modulusMpsi, densityLbIn3 } = shaftMaterialOf(v.material);
    const inches = new Quantity(s.fitted ?? s.least, 'mm').in('in');
    lines.push(
      line(
        'Longest span between bearings',
        '√(3.21 · D / N) · (E / ρ)^¼',
        `√(3.21 × ${f(inches)} / ${f(s.rpm)}) × (${f(modulusMpsi * 1e6)} / ${densityLbIn3})^¼`,
        `${f(s.span)} ft`,
      ),
    );
  }
  return lines;
}

/** Diameter of a solid propeller shaft by torsion, and the factor of safety of the one that is fitted. */
export const shaftSize = defineWorksheet({
  kind: 'shaft-size',
  version: 1,
  title: 'Propeller shaft size',
  group: 'propulsion',
  system: 'shaft-propeller',
  purpose:
    'Tells the least diameter of a propeller shaft for the power, speed, material and service, and what factor of safety the fitted shaft has.',
  inputs: shaftSizeInputs,
  refuse,
  applicability:
    'Solid round shafts in steady torsion on small craft. Bending, torsional vibration, a damaged keyway and a class society’s or flag’s own rule are not in it.',
  compute: (v) => {
    const s = sizeOf(v);
    const quick = v.propellerDiameter ? v.propellerDiameter.in('mm') / quickRuleDivisor : null;
    return {
      outputs: {
        shaftPower: measured('Power at the shaft', s.power, 'kW', { also: 'hp' }),
        shaftSpeed: measured('Shaft speed', s.rpm, 'rpm', { digits: 4 }),
        torque: measured('Torque', s.torque, 'N m', { digits: 4, also: 'lbf ft' }),
        yieldStrength: measured('Yield strength in shear taken', s.yieldMpa, 'MPa', { also: 'psi' }),
        leastDiameter: measured('Least diameter', s.least, 'mm', { digits: 4, also: 'in' }),
        stockSize: s.stock
          ? said('Next stock size', `${s.stock.value} ${s.stock.unit}`, s.stock.text(5))
          : said('Next stock size', null, 'larger than usual stock'),
        factorAsked: number('Factor of safety asked', s.factor),
        factorFitted: number('Factor of safety fitted', s.fittedFactor ?? null),
        longestSpan: measured('Longest span between bearings', s.span ?? null, 'ft', { also: 'm' }),
        quickRule: measured('Quick rule: propeller diameter / 14', quick, 'mm', { also: 'in' }),
      },
      ...conclude(judge(v, s)),
      working: workingOf(v, s),
    };
  },
  cautions: [
    'A shaft that parts lets water in and leaves the boat without drive. Size and material are for the designer, the shaft’s maker or the rule the boat was built to; this is a surveyor’s check.',
    'A keyway or taper badly cut, a bent shaft or torsional vibration can break a shaft that is large enough by this formula.',
    'Power and gear ratio come from plates and papers: check them against what is fitted.',
  ],
  sources: [
    {
      citation:
        'Gerr, Boat Mechanical Systems Handbook, p. 10, formula 1-2 (from ABYC P-6), and factors of safety',
      standing: 'printed',
      note: 'D = ∛(321,000 · shp · SF / (St · rpm)); the factors include the keyway. Computed here from T = P/ω without the rounding of 320,984 to 321,000',
    },
    {
      citation: 'Derivation: Westlawn Masthead 18, p. 15',
      standing: 'printed',
      note: 'T = 63,025 · shp / rpm, D³ = 16 T / (π St)',
    },
    {
      citation: 'Yield in torsional shear, modulus and density by material; span between bearings',
      standing: 'secondary',
      note: 'electricboats.co.uk and speedafloat.com, shaft size; trade figures, 70,000 psi for grade 22 is that of bars up to 2 in',
    },
    {
      citation: 'Propeller diameter / 14',
      standing: 'secondary',
      note: 'Gerr, p. 10: 24 in propeller, 1.71 in shaft; a rule of thumb for three blades',
    },
    { citation: 'Bar stock sizes', standing: 'practice', note: 'common practice, no source' },
  ],
});
