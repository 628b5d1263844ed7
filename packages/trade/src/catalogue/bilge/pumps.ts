import { bilgeBeforePumping, closedSpaces } from '../cautions.ts';
import { entries } from '../entry.ts';

export const bilgePumpEntries = entries(
  {
    key: 'bilge-pump-flow-poor',
    system: 'bilge',
    title: 'Bilge pump delivers far less than its label',
    lookFor:
      'Time the pump lifting measured water over the side with battery only. Follow the hose: corrugated hose, small bore, many bends, a long or high run and a non-return valve all take flow. See that the discharge is not of smaller bore than the pump outlet. Test figures for open flow are much above what is delivered in a boat.',
    observed:
      'The bilge pump {location}, labelled {size}, delivered {reading} when timed over the side on battery alone. Its hose is corrugated and reduced in bore.',
    consequence:
      'A pump with a poor run keeps up with a drip but not with a broken hose. Do not reckon on the label’s figure.',
    recommendation:
      'Shorten and straighten the run in smooth hose of the pump’s full bore, free of reducers, with a non-return valve only where it is really needed. Test again afterwards, and keep a hand pump that works.',
    urgency: 'next-layup',
    raise: 'Within days where the pump is the only one or hardly runs.',
    lower: 'A note for a dry boat with manual pumps that work.',
    harms: ['flooding'],
    references: ['ISO 15083', 'ISO 8849', 'ABYC H-22'],
    worksheets: ['dc-voltage-drop'],
    cautions: [bilgeBeforePumping],
    related: [
      'bilge-discharge-siphons',
      'bilge-pump-wiring-poor',
      'bilge-strainer-blocked',
      'bilge-hand-pump-poor',
    ],
    alsoCalled: ['pump capacity', 'gph', 'litres per hour', 'ribbed hose', 'check valve'],
  },
  {
    key: 'bilge-discharge-siphons',
    system: 'bilge',
    title: 'Bilge discharge siphons back into the boat',
    lookFor:
      'Note the height of outlet and hose against the waterline when loaded, heeled and squatting. Fill the hose, stop the pump and watch for back flow. See whether the hose has a high loop and whether the loop is vented. A non-return valve alone is not to be relied on: grit holds it open.',
    observed:
      'The bilge discharge {location} leaves the hull {size} above the waterline at rest with no loop. Water ran back after the pump stopped.',
    consequence:
      'When the outlet dips, sea water comes in by siphon without any fitting broken, and the pump works against it until the battery is flat.',
    recommendation:
      'Lead the outlet high up, with a loop above any heeled waterline and an anti-siphon vent at the top. Give each pump its own outlet.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where water has been seen to run back.',
    harms: ['flooding'],
    references: ['ISO 15083', 'ABYC H-22'],
    worksheets: [],
    cautions: [bilgeBeforePumping],
    related: ['through-hull-outlet-no-loop', 'bilge-pump-flow-poor', 'heads-no-vented-loop'],
    alsoCalled: ['syphon', 'anti-siphon', 'backflow'],
  },
  {
    key: 'bilge-hand-pump-poor',
    system: 'bilge',
    title: 'Hand bilge pump seized, perished or cannot be worked',
    lookFor:
      'Work it on water, from the place where the helmsman stands with lockers closed. Look at diaphragm and valves, pull at the strum box to see whether the hose comes with it, and ask for the handle: it should be tied beside the pump. Count the strokes it takes to lift a bucket of water.',
    observed:
      'The hand pump {location} did not lift water; {item} is perished. Its handle was not found beside it.',
    consequence: 'It is the last pump when the batteries are under water.',
    recommendation:
      'Renew diaphragm and valves, clear the suction, tie the handle at the pump, and try it twice a season. One pump should be workable from the helm with hatches shut.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where it is the only pump.',
    lower: 'Next lay-up where other hand pumps work.',
    harms: ['flooding'],
    references: ['ISO 15083'],
    worksheets: [],
    cautions: [bilgeBeforePumping],
    related: ['bilge-strainer-blocked', 'bilge-pump-flow-poor'],
    alsoCalled: ['manual bilge pump', 'diaphragm pump', 'emergency pump'],
  },
  {
    key: 'bilge-strainer-blocked',
    system: 'bilge',
    title: 'Bilge suction blocked, without strainer or high in the sump',
    lookFor:
      'Lift the suction from the sump: it should have a strainer, lie at the lowest point and be cleanable. Feel beneath for rag, hair and cable ties. Look at what else is in the bilge that will float to it: labels, shavings, insulation foam. See whether each compartment can be pumped.',
    observed:
      'The suction {location} is blocked with {material} and sits {size} above the bottom of the sump.',
    consequence:
      'A pump that draws air or rubbish does nothing, and the depth below the suction always holds water.',
    recommendation:
      'Clear the bilge, fit a strainer that can be reached, lead the suction to the lowest place.',
    urgency: 'next-layup',
    raise: 'Within days where the pump cannot lift water at all.',
    harms: ['flooding'],
    references: ['ISO 15083'],
    worksheets: [],
    cautions: [bilgeBeforePumping, 'Switch the pump off at its fuse before putting a hand to the suction.'],
    related: ['bilge-limbers-blocked', 'bilge-pump-flow-poor'],
    alsoCalled: ['strum box', 'strainer', 'filter', 'sump'],
  },
  {
    key: 'bilge-pump-loose',
    system: 'bilge',
    title: 'Bilge pump not fastened, or its joint leaks',
    lookFor:
      'Pull at the pump body: it should be fixed on a base and not hang on hose and wire. Look at outlet joint, clips and hose at the bend beneath. A pump in its strainer clip that a finger frees is right; one lying loose in the bilge is not.',
    observed: 'The bilge pump {location} lies loose in the sump; {item} leaks while it runs.',
    consequence: 'A loose pump turns away from the deepest water, draws air and strains hose and wire.',
    recommendation:
      'Fix the base to a pad bonded in the bilge, never through the bottom, and clip the hose. Repair the leak and test.',
    urgency: 'next-layup',
    raise: 'Within days where it fails to lift.',
    harms: ['flooding'],
    references: ['ABYC H-22'],
    worksheets: [],
    cautions: [bilgeBeforePumping],
    related: ['bilge-float-switch-poor', 'bilge-strainer-blocked'],
    alsoCalled: ['submersible pump', 'strainer base'],
  },
  {
    key: 'bilge-limbers-blocked',
    system: 'bilge',
    title: 'Limber holes blocked: water cannot reach the pump',
    lookFor:
      'Pour a little clean water at the far end and watch that it reaches the pump. Look at each frame for a hole at its lowest point, sealed on its edges in laminate. Water that stands stained with a film of oil has been there long. Watertight bulkheads have none on purpose and need their own pump.',
    observed: 'Water stands {location}, {extent}; {count} limber holes are blocked.',
    consequence:
      'Water that cannot run stays to rot frames and rust bolts, and hides a leak; the pump lies dry beside it.',
    recommendation:
      'Clear, enlarge and seal the holes, and keep a line or chain through them where this can be done.',
    urgency: 'next-layup',
    raise: 'Within days where a compartment cannot be pumped at all.',
    lower: 'A note for one that a finger clears.',
    harms: ['flooding', 'deterioration'],
    references: ['ISO 15083'],
    worksheets: [],
    cautions: [closedSpaces],
    related: ['bilge-strainer-blocked', 'hull-stringers-decayed', 'keel-ballast-iron-scrap'],
    alsoCalled: ['limber', 'drain holes', 'standing water'],
  },
  {
    key: 'bilge-oil-present',
    system: 'bilge',
    title: 'Oil or fuel in the bilge',
    lookFor:
      'Wipe a clean pad over the bilge, and smell it: diesel, petrol and engine oil are told apart by nose. Look for a source: gland, gearbox drain, fuel joint, filter or spilled change. An old stained film that does not come back after cleaning is history.',
    observed: 'Oil was found in the bilge {location}, {extent}. The pump discharges overboard.',
    consequence:
      'Oil over the side is an offence nearly everywhere; fuel in the bilge is also a fire, and petrol an explosion.',
    recommendation:
      'Stop the leak, clean with absorbent and dispose of it ashore. Keep an absorbent pad and drip tray below the engine, and show the oil discharge placard where the law asks for it. Leave the automatic pump off only while somebody is aboard to watch.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before next use where petrol is found, or the leak is fresh: do not start or switch anything until cleared.',
    lower: 'Next lay-up for staining without free oil.',
    harms: ['pollution', 'unlawful', 'fire-explosion'],
    references: ['MARPOL Annex I', '33 CFR 155.450'],
    worksheets: [],
    cautions: [bilgeBeforePumping, closedSpaces],
    related: [
      'bilge-strainer-blocked',
      'bilge-limbers-blocked',
      'engine-oil-leak',
      'fuel-hose-perished',
      'fuel-vapour-ventilation',
    ],
    alsoCalled: ['oily bilge', 'sheen', 'diesel in bilge', 'petrol/gasoline', 'oil placard'],
  },
);
