import { chart } from '../../drawing/chart.ts';
import { measured, number, type Output, said } from '../core/outputs.ts';
import { Quantity } from '../core/quantity.ts';
import { symbolOf } from '../core/units.ts';
import { conclude } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { type Compression, compressionOf, judgeCompression, pressureText } from './engine-compression.ts';
import { type EngineValues, engineReadingsInputs, refuseEngineReadings } from './engine-readings-inputs.ts';
import { compressionRuleOf, compressionRules, hoses } from './engine-rules-table.ts';
import { judgeSpeed, judgeTemperatures, shareOfRated } from './engine-running.ts';

function outputsOf(v: EngineValues, c: Compression | undefined): Record<string, Output> {
  const also = { digits: 4, also: 'bar' } as const;
  const low = c?.cylinders.filter((cylinder) => cylinder.low).map((cylinder) => cylinder.name) ?? [];
  return {
    highest: measured('Highest compression', c?.highest ?? null, 'psi', also),
    lowest: measured('Lowest compression', c?.lowest ?? null, 'psi', also),
    difference: measured('Difference', c?.difference ?? null, 'psi', also),
    spread: measured('Spread, of the highest', c?.spread ?? null, '%'),
    lowestShare: measured('Lowest, of the highest', c?.share ?? null, '%'),
    leastAccepted: measured('Least compression accepted', c?.least ?? null, 'psi', also),
    lowCylinders: number('Cylinders below it', c ? low.length : null),
    lowNames: said('Which', c ? low.join(', ') : null, c ? low.join(', ') || 'none' : undefined),
    ratedReached: measured('Rated speed reached', shareOfRated(v) ?? null, '%', { digits: 4 }),
    hoseLimit: measured('Exhaust hose, at most', v.wetExhaust ? hoses[v.hose].limitF : null, 'degF', {
      also: 'degC',
    }),
  };
}

function workingOf(v: EngineValues, c: Compression | undefined): string[] {
  const lines: string[] = [];
  if (c) {
    const text = (psi: number) => pressureText(v, psi);
    const f = (psi: number) =>
      formatNumber(new Quantity(psi, 'psi').in(v.cylinders?.[0]?.dry.unit ?? 'psi'), 4);
    lines.push(
      line('Compression', c.cylinders.map(({ name, dry }) => `${name}: ${text(dry)}`).join('; ')),
      line(
        'Spread',
        '(highest − lowest) / highest',
        `(${f(c.highest)} − ${f(c.lowest)}) / ${f(c.highest)}`,
        `${formatNumber(c.spread, 4)}%`,
      ),
    );
    if (c.leastBeside !== undefined && v.rule !== 'manual') {
      const share = compressionRuleOf(v.rule).leastShare;
      lines.push(line('Least beside the highest', `${share} × ${f(c.highest)}`, text(c.leastBeside)));
    } else if (c.leastBeside !== undefined && v.manualDifference) {
      const difference = f(v.manualDifference.in('psi'));
      lines.push(line('Least beside the highest', `${f(c.highest)} − ${difference}`, text(c.leastBeside)));
    }
    if (c.leastAlone !== undefined) lines.push(line('Least by itself', text(c.leastAlone)));
  }
  const share = shareOfRated(v);
  if (share !== undefined && v.ratedSpeed && v.reachedSpeed) {
    const rpm = (quantity: Quantity) => formatNumber(quantity.in('rpm'), 4);
    lines.push(
      line(
        'Rated speed reached',
        'reached / rated',
        `${rpm(v.reachedSpeed)} / ${rpm(v.ratedSpeed)}`,
        `${formatNumber(share, 4)}%`,
      ),
    );
  }
  if (v.coolant)
    lines.push(line('Coolant', `${v.coolant.text()}, at most ${v.coolantMost.to(v.coolant.unit).text(3)}`));
  if (v.wetExhaust) {
    lines.push(
      line('Exhaust hose', `${v.wetExhaust.text()}, at most ${hoses[v.hose].limitF} °F by its kind`),
    );
  }
  if (v.dryExhaust) lines.push(line('Dry exhaust surface', v.dryExhaust.text()));
  return lines;
}

function drawCompression(v: EngineValues, c: Compression) {
  const unit = v.cylinders?.[0]?.dry.unit ?? 'psi';
  const to = (psi: number) => new Quantity(psi, 'psi').in(unit);
  const bars = (low: boolean) =>
    c.cylinders.flatMap((cylinder, i): [number, number][] =>
      cylinder.low === low ? [[i, to(cylinder.dry)]] : [],
    );
  const wet = c.cylinders.flatMap((cylinder, i): [number, number][] =>
    cylinder.wet === undefined ? [] : [[i, to(cylinder.wet)]],
  );
  const names = c.cylinders.filter((cylinder) => cylinder.low).map((cylinder) => cylinder.name);
  return chart({
    key: 'compression',
    title: 'Compression by cylinder',
    description: `${c.cylinders.map(({ name, dry }) => `${name}: ${pressureText(v, dry)}`).join(', ')}. ${names.length === 0 ? 'None is below what is asked.' : `Below what is asked: ${names.join(', ')}.`}`,
    x: {
      label: wet.length > 0 ? 'Cylinder (dot: with oil)' : 'Cylinder',
      domain: [-0.6, c.cylinders.length - 0.4],
      ticks: c.cylinders.map(({ name, low }, at) => ({ at, words: low ? `${name} low` : name })),
    },
    y: { label: `Compression, ${symbolOf(unit)}`, fromZero: true },
    height: 260,
    series: [
      { kind: 'bars', points: bars(false) },
      { kind: 'bars', points: bars(true), strong: true },
      { kind: 'points', points: wet },
    ],
    ...(c.least === undefined ? {} : { limits: [{ axis: 'y' as const, at: to(c.least), words: 'least' }] }),
  });
}

/** Compression, full-throttle speed and temperatures of an engine. */
export const engineReadings = defineWorksheet({
  kind: 'engine-readings',
  version: 1,
  title: 'Engine readings',
  group: 'propulsion',
  system: 'engine',
  purpose:
    'Judges an engine’s compression cylinder by cylinder, whether it reaches its rated speed, and the temperatures of coolant and exhaust.',
  inputs: engineReadingsInputs,
  refuse: refuseEngineReadings,
  applicability:
    'Petrol and diesel engines of small craft, warm. Printed compression rules differ and the engine’s own manual outranks them; the rules’ least pressures are for petrol only.',
  compute: (v) => {
    const c = compressionOf(v);
    return {
      outputs: outputsOf(v, c),
      ...conclude([...(c ? judgeCompression(v, c) : []), ...judgeSpeed(v), ...judgeTemperatures(v)]),
      working: workingOf(v, c),
    };
  },
  draw: (v) => {
    const c = compressionOf(v);
    return c ? [drawCompression(v, c)] : [];
  },
  cautions: [
    'Keep hands, hair and clothing clear of a turning engine; exhaust and coolant scald, and a pressurised cap is never opened hot.',
    'For compression disable ignition and fuel, and ventilate a petrol engine’s space first: a spark there can explode. Removing injectors or plugs is for a mechanic.',
    'Loss of raw water can bring an exhaust to 1,000 °F (538 °C) within minutes and burn through hose: stop at once if the water stops.',
    'These are a surveyor’s readings on one day; the condition of an engine is for a mechanic of its make.',
  ],
  sources: [
    {
      citation: 'Typical compression: petrol 140–160 psi, diesel 350–475 psi',
      standing: 'secondary',
      note: 'mastermarinesurveyor.com, compression testing; for orientation only',
    },
    ...Object.values(compressionRules).map((rule) => rule.source),
    {
      citation:
        'Professional BoatBuilder, Dec 2017/Jan 2018, p. 71: wet section normally 150–200 °F, up to 1,000 °F without water',
      standing: 'secondary',
    },
    {
      citation: 'Exhaust hose: SAE J2006 R2 100 °C (212 °F); EPDM 250 °F; silicone for 300–500 °F',
      standing: 'secondary',
      note: 'ybw thread 190441 and wmjmarine; the hose’s own marking decides',
    },
    {
      citation: 'ABYC P-1: guard or lagging on dry exhaust surfaces above 200 °F',
      standing: 'secondary',
      note: 'quoted at marinemechanic p. 68',
    },
    {
      citation: 'Coolant at most 95 °C, rated speed within 5%, wet-test rise of 10%',
      standing: 'practice',
      note: 'common practice, no source; the manual’s own figures come first',
    },
  ],
});
