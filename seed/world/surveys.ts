import { larkspindleHull } from './larkspindle-hull.ts';
import { larkspindleRigMachinery } from './larkspindle-rig-machinery.ts';
import { larkspindleSafety } from './larkspindle-safety.ts';
import { oxbowFindings } from './oxbow-lantern.ts';
import { pepperFindings } from './pepper-skiffle.ts';
import { tamarackFindings } from './tamarack-fig.ts';
import type { SurveySpec } from './types.ts';

const usualLimits =
  'Nothing was dismantled beyond what is stated. Parts built in, lined, or covered by stores, ballast or machinery could not be seen, and we cannot say that they are free from defect. Dates, hours and thicknesses when new are as told or marked unless measured.\n\nGas and mains electrics were looked at, not tested. Work on either belongs to a person licensed for it where the vessel lies.';

/** Four surveys of the first firm, each at another stage, and one of the second. */
export const surveys: SurveySpec[] = [
  {
    key: 'larkspindle-insurance',
    firm: 'pellowick',
    vessel: 'larkspindle',
    purpose: 'insurance',
    state: 'issued',
    surveyor: 'tobin',
    requestedBy: 'Idony Wenloweth, owner, at the request of Cinderbuoy Marine Underwriting',
    clearanceDecidedBy: 'insurer',
    timeZone: 'Europe/London',
    scope:
      'To examine the vessel ashore and afloat and report on her condition for renewal of insurance: hull, deck, skin fittings, steering, stern gear, engine as far as it can be reached, gas, electrical systems, rig from deck level, and safety gear.\n\nThe engine was run at the berth for 25 minutes. Moisture readings are on the relative scale of a capacitance meter and serve for comparison only.',
    limitations: `${usualLimits}\n\nThe mast was stepped and was seen from deck level with binoculars. Sails were seen stowed. The tanks were not opened.`,
    attendances: [
      { day: -52, place: 'Stonecleat Boatyard, Sallowhythe', condition: 'ashore' },
      { day: -50, place: 'Berth 14, Sallowhythe', condition: 'afloat' },
    ],
    parties: [
      { role: 'owner', person: 'idony', released: true, pays: true },
      { role: 'insurer', person: 'hesper', released: true },
      { role: 'yard', person: 'gethin', released: true },
      { role: 'broker', person: 'aurelie', released: true },
      { role: 'buyer', person: 'corvin', released: true },
    ],
    photos: [
      { scene: 'larkspindle-ashore', caption: 'Larkspindle ashore at Sallowhythe, from the port beam' },
      { scene: 'larkspindle-afloat', caption: 'Larkspindle at her berth' },
    ],
    findings: [...larkspindleHull, ...larkspindleRigMachinery, ...larkspindleSafety],
    issuedDay: -45,
  },
  {
    key: 'oxbow-pre-purchase',
    firm: 'pellowick',
    vessel: 'oxbow-lantern',
    purpose: 'pre-purchase',
    state: 'drafting',
    surveyor: 'mirela',
    requestedBy: 'Corvin Eastermoor, intending buyer',
    clearanceDecidedBy: 'surveyor',
    printCosts: true,
    timeZone: 'Europe/Amsterdam',
    scope:
      'To examine the vessel for an intending buyer and report on her structure, machinery and equipment. Ultrasonic thickness readings at 115 points of the bottom and sides, paint left on where sound. A trial of one hour under way.',
    limitations: `${usualLimits}\n\nBallast in the saloon bilge and the lining of the after cabin were left in place. The plating behind them was read from outside only.`,
    attendances: [
      { day: -6, place: 'Ommerdiek slip, Tarnmouth Basin', condition: 'ashore' },
      { day: -5, place: 'Tarnmouth Basin to Reedholm Lock', condition: 'under-way' },
    ],
    parties: [
      { role: 'buyer', person: 'corvin', released: false, pays: true },
      { role: 'broker', person: 'aurelie', released: false },
      { role: 'owner', person: 'joren', released: false },
    ],
    photos: [
      { scene: 'oxbow-ashore', caption: 'Oxbow Lantern on the slip' },
      { scene: 'oxbow-afloat', caption: 'Under way in Tarnmouth Basin' },
    ],
    findings: oxbowFindings,
  },
  {
    key: 'larkspindle-re-inspection',
    firm: 'pellowick',
    vessel: 'larkspindle',
    purpose: 're-inspection',
    state: 'booked',
    surveyor: 'tobin',
    requestedBy: 'Hesper Vanterpole-Gray, Cinderbuoy Marine Underwriting',
    clearanceDecidedBy: 'insurer',
    timeZone: 'Europe/London',
    scope:
      'To look again at the work done on the recommendations of the insurance survey, in particular steering, battery leads and the heads seacock, and to work every seacock.',
    limitations: 'Limited to the recommendations named. It is not a new survey of the vessel.',
    attendances: [{ day: 9, place: 'Stonecleat Boatyard, Sallowhythe', condition: 'ashore' }],
    parties: [
      { role: 'owner', person: 'idony', released: false, pays: true },
      { role: 'insurer', person: 'hesper', released: false },
      { role: 'yard', person: 'gethin', released: false },
    ],
    photos: [],
    findings: [],
  },
  {
    key: 'pepper-condition',
    firm: 'pellowick',
    vessel: 'pepper-skiffle',
    purpose: 'condition',
    state: 'in-review',
    surveyor: 'mirela',
    requestedBy: 'Delphin Marchbrook, owner',
    clearanceDecidedBy: 'surveyor',
    timeZone: 'America/New_York',
    scope:
      'To report on the condition of the boat ashore before she is sold: hull, drive, petrol system, ventilation, electrics and safety gear. The engine was turned over, not run.',
    limitations: `${usualLimits}\n\nThe boat was on her trailer. The bottom could not be seen where it rests on the bunks. No trial was made.`,
    attendances: [{ day: -12, place: 'Loon Spit Landing, storage row C', condition: 'ashore' }],
    parties: [
      { role: 'owner', person: 'delphin', released: false, pays: true },
      { role: 'broker', person: 'aurelie', released: false },
    ],
    photos: [
      { scene: 'pepper-ashore', caption: 'Pepper Skiffle on her trailer' },
      { scene: 'pepper-afloat', caption: 'Afloat last season, picture from the owner' },
    ],
    findings: pepperFindings,
  },
  {
    key: 'tamarack-insurance',
    firm: 'dunmarrow',
    vessel: 'tamarack-fig',
    purpose: 'insurance',
    state: 'issued',
    surveyor: 'sunniva',
    requestedBy: 'Lorcan Ivelstrand, owner',
    clearanceDecidedBy: 'surveyor',
    timeZone: 'Europe/London',
    scope:
      'To examine the boat ashore for insurance and report on hull, deck, rig from deck level and safety.',
    limitations: usualLimits,
    attendances: [{ day: -22, place: 'Grimmet Haven hard', condition: 'ashore' }],
    parties: [{ role: 'owner', person: 'lorcan', released: true, pays: true }],
    photos: [{ scene: 'tamarack-ashore', caption: 'Tamarack Fig on the hard' }],
    findings: tamarackFindings,
    issuedDay: -18,
  },
];
