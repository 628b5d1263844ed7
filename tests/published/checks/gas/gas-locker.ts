import type { Check, CheckedWorksheet } from '../../support/check.ts';

const seen = {
  vapourTight: 'yes',
  opensTop: 'yes',
  gasketLatch: 'yes',
  passagesSealed: 'yes',
  drainLowest: 'yes',
  drainFalls: 'yes',
  drainClear: 'yes',
  nothingElse: 'yes',
  secured: 'yes',
  noIgnition: 'yes',
};
const iso = (more: Record<string, unknown> = {}) => ({
  ...seen,
  rule: 'iso-10239',
  drainBore: 19,
  outletHeight: 75,
  outletDistance: 500,
  ...more,
});
const inch = (value: number) => ({ value, unit: 'in' });
const abyc = (more: Record<string, unknown> = {}) => ({
  ...iso({ rule: 'abyc-a1', drainBore: inch(0.5), outletHeight: inch(1), outletDistance: inch(20) }),
  ...more,
});
const uk = (more: Record<string, unknown> = {}) => ({ ...iso({ rule: 'uk-inland' }), ...more });
const older = (drainBore: number, gasCarried?: unknown) =>
  uk({ drainBore, before2000: 'yes', ...(gasCarried === undefined ? {} : { gasCarried }) });

const coast = 'UK Maritime and Coastguard Agency guidance based on ISO 10239, 2.2 (imorules.com)';
const society = 'classification society rules for recreational craft, section 5, 501 (ics.org.ir)';
const inland = 'UK Boat Safety Scheme, non-private boats, standard 7.5';
const surveyors = 'skyemarine.com, on ABYC A-1';

const at = (
  name: string,
  source: string,
  inputs: Record<string, unknown>,
  verdict: Check['verdict'],
  outputs?: Check['outputs'],
): Check => ({
  name,
  source,
  basis: 'printed',
  inputs,
  ...(verdict ? { verdict } : {}),
  ...(outputs ? { outputs } : {}),
});

const edge = (check: Check): Check => ({ ...check, basis: 'edge' });

export const gasLockerChecks: CheckedWorksheet = {
  kind: 'gas-locker',
  checks: [
    at('19 mm, 75 mm and 500 mm meet ISO 10239', `${coast}: 19 mm, 75 mm, 500 mm`, iso(), 'satisfactory', {
      requiredBore: 19,
      requiredHeight: 75,
      requiredDistance: 500,
    }),
    at(
      'a bore of 18 mm does not',
      `${society}: not less than 19 mm inside diameter`,
      iso({ drainBore: 18 }),
      'unsatisfactory',
    ),
    at(
      'an outlet 74 mm above the water does not',
      `${society}: not less than 75 mm above the at-rest waterline`,
      iso({ outletHeight: 74 }),
      'unsatisfactory',
    ),
    at(
      'an opening 480 mm away does not',
      `${society}: at least 500 mm from any hull opening`,
      iso({ outletDistance: 480 }),
      'unsatisfactory',
    ),
    at(
      'half an inch, above water, 20 in away meet ABYC A-1',
      `${surveyors}: 1/2 in, 20 in`,
      abyc(),
      'satisfactory',
      {
        requiredBore: 12.7,
        requiredHeight: 0,
        requiredDistance: 508,
      },
    ),
    at('500 mm is less than 20 in', `${surveyors}: 20 in`, abyc({ outletDistance: 500 }), 'unsatisfactory'),
    at('19 mm meets the UK inland rule', `${inland}: at least 19 mm`, uk(), 'satisfactory', {
      requiredBore: 19,
    }),
    at(
      '12 mm meets it before 2000 with 15 kg of gas',
      `${inland}: 12 mm with no more than 15 kg`,
      older(12, 15),
      'satisfactory',
      { requiredBore: 12 },
    ),
    at(
      '12 mm does not on a newer boat',
      `${inland}: at least 19 mm`,
      uk({ drainBore: 12 }),
      'unsatisfactory',
    ),
    {
      name: 'bore 19 mm, outlet 80 mm up and 600 mm away pass',
      source: 'ISO 10239’s three limits, compared by hand',
      basis: 'computed',
      inputs: iso({ outletHeight: 80, outletDistance: 600 }),
      verdict: 'satisfactory',
    },
    {
      name: '13 mm passes ABYC’s half inch and fails ISO’s 19 mm',
      source: '1/2 in = 12.7 mm, compared by hand',
      basis: 'computed',
      inputs: abyc({ drainBore: 13 }),
      verdict: 'satisfactory',
    },
    edge(
      at('0.75 in is 19.05 mm: enough', `${coast}: 19 mm`, iso({ drainBore: inch(0.75) }), 'satisfactory'),
    ),
    edge(at('0.74 in is not', `${coast}: 19 mm`, iso({ drainBore: inch(0.74) }), 'unsatisfactory')),
    edge(at('12.69 mm is under half an inch', surveyors, abyc({ drainBore: 12.69 }), 'unsatisfactory')),
    edge(
      at(
        'an outlet right at the waterline is not above it',
        surveyors,
        abyc({ outletHeight: 0 }),
        'unsatisfactory',
      ),
    ),
    edge(at('15.1 kg of gas: the rule doesn’t spell it out', inland, older(12, 15.1), 'indeterminate')),
    edge(at('nor is it told without the mass', inland, older(12), 'indeterminate')),
    edge(at('but 19 mm is enough whatever it is', inland, older(19), 'satisfactory')),
    edge(at('and under 12 mm never', inland, older(11.9), 'unsatisfactory')),
    edge(at('no drain at all', coast, iso({ drainBore: 0 }), 'unsatisfactory')),
    edge(at('an outlet not measured', coast, iso({ outletHeight: undefined }), 'indeterminate')),
    edge(
      at(
        'a point not examined keeps it open',
        'our rule',
        iso({ drainFalls: 'not-examined' }),
        'indeterminate',
        {
          notExamined: 1,
          faults: 0,
        },
      ),
    ),
    edge(
      at(
        'a failed point outweighs it',
        'our rule',
        iso({ drainFalls: 'not-examined', vapourTight: 'no' }),
        'unsatisfactory',
      ),
    ),
    edge(
      at(
        'no gasket: ABYC asks for one',
        `${surveyors}: gasketed and latched`,
        abyc({ gasketLatch: 'no' }),
        'unsatisfactory',
      ),
    ),
    edge(at('no gasket: attention under ISO', 'our rule', iso({ gasketLatch: 'no' }), 'attention')),
    {
      name: 'a drain of less than nothing is refused',
      source: 'impossible',
      basis: 'edge',
      inputs: iso({ drainBore: -1 }),
      refused: ['drainBore'],
    },
  ],
  unverified: [
    'ISO 10239 and ABYC A-1 themselves were not read: their figures are from public restatements (a coastguard’s guidance, a classification society, marine surveyors).',
    'The UK inland rule’s larger drain for more than 15 kg on older boats was not found, so the worksheet answers indeterminate there.',
  ],
};
