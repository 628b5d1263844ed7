import type { EquipmentSpec } from './types.ts';

type Fields = Omit<EquipmentSpec, 'survey'>;

const of = (survey: string, items: readonly Fields[]): EquipmentSpec[] =>
  items.map((item) => ({ survey, ...item }));

const year = 12;

/** Equipment found on board; ages and dates are those that the findings tell. */
export const inventory: EquipmentSpec[] = [
  ...of('larkspindle-insurance', [
    {
      system: 'fire-safety',
      name: 'Portable extinguisher, dry powder, 2 kg',
      serialNumber: 'PX 30417',
      place: 'Companionway',
      made: -7 * year - 4,
      expires: -year,
      note: 'Without pressure. Last service label six years old.',
    },
    { system: 'fire-safety', name: 'Fire blanket', place: 'Galley', made: -9 * year - 4 },
    {
      system: 'fire-safety',
      name: 'Carbon monoxide alarm',
      maker: 'Corrow Alarms',
      place: 'Saloon, port',
      expires: 26,
    },
    {
      system: 'gas',
      name: 'Gas hose',
      place: 'Gas locker to galley',
      made: -11 * year - 4,
      expires: -6 * year - 4,
    },
    { system: 'gas', name: 'Gas regulator', place: 'Gas locker', made: -11 * year - 4, expires: -year },
    { system: 'life-saving', name: 'Red hand flares', count: 4, place: 'Chart table', expires: -36 },
    { system: 'life-saving', name: 'Parachute rockets', count: 2, place: 'Chart table', expires: -14 },
    {
      system: 'life-saving',
      name: 'Liferaft, four persons',
      maker: 'Ebbtide Safety',
      serialNumber: 'ET4-00871',
      place: 'Coachroof',
      made: -10 * year - 4,
      expires: -24,
      note: 'The date is that on which service fell due.',
    },
    {
      system: 'life-saving',
      name: 'Inflatable lifejackets',
      count: 4,
      place: 'Hanging locker',
      made: -5 * year - 4,
      expires: 2,
    },
    {
      system: 'life-saving',
      name: 'Personal locator beacon',
      maker: 'Ebbtide Safety',
      serialNumber: 'PB 5520 118',
      place: 'Skipper’s jacket',
      expires: 15,
    },
    {
      system: 'rig-sails',
      name: 'Standing rigging',
      made: -14 * year - 4,
      note: 'As told by the owner; no bill was seen.',
    },
    {
      system: 'rig-sails',
      name: 'Mainsail',
      maker: 'Tarrant Loft',
      serialNumber: 'TL 1188',
      made: -8 * year - 4,
    },
    { system: 'exhaust', name: 'Exhaust hose', made: -12 * year - 4, place: 'Engine to silencer' },
    {
      system: 'dc-electrical',
      name: 'Service batteries',
      count: 2,
      place: 'Under the quarter berth',
      made: -4 * year - 4,
    },
  ]),
  ...of('oxbow-pre-purchase', [
    {
      system: 'fire-safety',
      name: 'Fixed extinguisher of the engine space',
      serialNumber: 'FK 6-2231',
      place: 'Engine room, after bulkhead',
      made: -6 * year - 4,
      expires: 5,
    },
    {
      system: 'fire-safety',
      name: 'Portable extinguisher, foam',
      count: 2,
      place: 'Wheelhouse and after cabin',
      made: -3 * year - 4,
      expires: 9,
    },
    {
      system: 'life-saving',
      name: 'Lifebuoy with light',
      count: 2,
      place: 'Wheelhouse roof',
      made: -9 * year - 4,
    },
    { system: 'life-saving', name: 'Red hand flares', count: 6, place: 'Wheelhouse', expires: 1 },
    {
      system: 'fuel',
      name: 'Fuel hose',
      place: 'Filter to engine',
      made: -18 * year - 4,
      note: 'No marking.',
    },
  ]),
  ...of('pepper-condition', [
    {
      system: 'fire-safety',
      name: 'Portable extinguisher, dry powder',
      place: 'Helm',
      made: '2012-01-01',
      expires: '2024-12-31',
      note: 'Not rechargeable; twelve years from manufacture. Gauge in the green.',
    },
    { system: 'life-saving', name: 'Orange smoke signals', count: 3, place: 'Cabin locker', expires: -7 },
    { system: 'life-saving', name: 'Foam lifejackets', count: 5, place: 'Cabin berth', made: -8 * year - 4 },
    { system: 'dc-electrical', name: 'Starting battery', place: 'Engine space', made: -3 * year - 4 },
  ]),
  ...of('tamarack-insurance', [
    { system: 'gas', name: 'Gas hose', place: 'Locker to cooker', made: -4 * year - 4, expires: 12 },
    { system: 'fire-safety', name: 'Portable extinguisher, foam', place: 'Companionway', expires: 30 },
    { system: 'life-saving', name: 'Red hand flares', count: 3, place: 'Cockpit locker', expires: 4 },
    { system: 'rig-sails', name: 'Standing rigging', made: -9 * year - 4 },
  ]),
];
