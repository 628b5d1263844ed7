import type { FirmSpec, PersonSpec } from './types.ts';

/** The two survey firms of the demonstration. The second exists to show that neither sees the other. */
export const firms: FirmSpec[] = [
  {
    key: 'pellowick',
    name: 'Pellowick Marine Survey',
    address: '3 Saltlather Row, Sallowhythe',
    email: 'office@pellowick.example',
    phone: '+44 1632 960 114',
    timeZone: 'Europe/London',
    currency: 'GBP',
  },
  {
    key: 'dunmarrow',
    name: 'Dunmarrow Small Craft Survey',
    address: 'The Old Net Loft, Grimmet Haven',
    email: 'desk@dunmarrow.example',
    phone: '+44 1632 960 871',
    timeZone: 'Europe/London',
    currency: 'GBP',
  },
];

/** Everybody who may sign in. Names are invented; every address is in a reserved domain. */
export const people: PersonSpec[] = [
  {
    key: 'ysolde',
    name: 'Ysolde Karrowmere',
    email: 'ysolde@pellowick.example',
    firm: { key: 'pellowick', role: 'principal' },
  },
  {
    key: 'tobin',
    name: 'Tobin Ashgravel',
    email: 'tobin@pellowick.example',
    firm: { key: 'pellowick', role: 'surveyor' },
  },
  {
    key: 'mirela',
    name: 'Mirela Fontecroix',
    email: 'mirela@pellowick.example',
    firm: { key: 'pellowick', role: 'surveyor' },
  },
  {
    key: 'perrin',
    name: 'Perrin Oakhallow',
    email: 'perrin@pellowick.example',
    firm: { key: 'pellowick', role: 'office' },
  },
  {
    key: 'bramwin',
    name: 'Bramwin Tolleskey',
    email: 'bramwin@dunmarrow.example',
    firm: { key: 'dunmarrow', role: 'principal' },
  },
  {
    key: 'sunniva',
    name: 'Sunniva Drakelow-Ness',
    email: 'sunniva@dunmarrow.example',
    firm: { key: 'dunmarrow', role: 'surveyor' },
  },
  { key: 'idony', name: 'Idony Wenloweth', email: 'idony@wenloweth.example' },
  { key: 'joren', name: 'Jören Askevaal', email: 'joren@askevaal.example' },
  { key: 'delphin', name: 'Delphin Marchbrook', email: 'delphin@marchbrook.example' },
  { key: 'corvin', name: 'Corvin Eastermoor', email: 'corvin@eastermoor.example' },
  {
    key: 'aurelie',
    name: 'Aurélie Montbracq',
    email: 'aurelie@lanternlock.example',
    organisation: 'Lanternlock Yacht Brokerage',
  },
  {
    key: 'hesper',
    name: 'Hesper Vanterpole-Gray',
    email: 'hesper@cinderbuoy.example',
    organisation: 'Cinderbuoy Marine Underwriting',
  },
  {
    key: 'gethin',
    name: 'Gethin Rooksbarrow',
    email: 'gethin@stonecleat.example',
    organisation: 'Stonecleat Boatyard',
  },
  { key: 'lorcan', name: 'Lorcan Ivelstrand', email: 'lorcan@ivelstrand.example' },
];
