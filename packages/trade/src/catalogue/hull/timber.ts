import { closedSpaces, underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const hullTimberEntries = entries(
  {
    key: 'hull-planking-decayed',
    system: 'hull',
    title: 'Soft or decayed planking, frames or stem',
    lookFor:
      'Tap with a light mallet and listen for a dead note; then press, do not stab, with a blunt spike across the grain. Try first where fresh water lies: under covering boards, at the stem head, transom edges, frame heels, butts and beneath leaking fittings. Paint that ripples, dark stain and a mushroom smell are signs. Wood softened only at the face by anode or bonding alkali is pale and furry, and tells of over-protection instead.',
    observed:
      'Timber of {item} is soft {location}, {extent}. A spike entered {size} under hand pressure and the fibres broke short.',
    consequence:
      'Decayed wood holds neither fastenings nor caulking and has little strength left. Decay spreads along the grain beyond what is seen, while damp and air remain.',
    recommendation:
      'Have a boatbuilder open up until sound wood is met, scarf or replace the affected members in matching timber, treat the neighbours with preservative and stop the leak that fed it. Refasten as needed.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use for planking below the waterline, garboards, stem and frames at the keel.',
    lower: 'Next lay-up for a small patch in rail or trim.',
    harms: ['structural-failure', 'flooding', 'deterioration'],
    references: [],
    worksheets: ['sounding-map'],
    cautions: [underBoat, closedSpaces],
    related: ['hull-fastenings-wasted', 'hull-seams-open', 'hull-marine-borers', 'corrosion-overprotected'],
    alsoCalled: ['rot', 'dry rot', 'wet rot', 'nail sickness'],
  },
  {
    key: 'hull-seams-open',
    system: 'hull',
    title: 'Seams open or caulking slack',
    lookFor:
      'Follow the seams, garboards and hood ends first. Try the caulking with a thin blade: good caulking resists, slack caulking moves or comes out as wet string. A seam that has shed its stopping after weeks ashore may only be dried out; one that is wide at the same place inside and out, or beside a loose plank end, is not. Look for weeps and salt in the bilge below.',
    observed:
      'Seams are open {location}, {extent}, the widest about {size}. The caulking could be moved with a blade.',
    consequence:
      'Open seams leak when she is launched or works in a sea. Slack caulking also means that planks move on their frames, which wears the fastenings.',
    recommendation:
      'Have a shipwright rake out, examine plank edges and fastenings, recaulk in the proper order and stop the seams. Do not force hard filler or sealant into dry seams: the planks swell and need room. Let her take up in the slings with pumps ready and someone aboard.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use below the waterline or where plank ends have sprung.',
    lower: 'A note where the planks have only dried out ashore and the caulking is firm.',
    harms: ['flooding', 'structural-failure'],
    references: [],
    worksheets: [],
    cautions: [
      underBoat,
      'At relaunch keep her in the slings and keep somebody aboard until the leaking stops.',
    ],
    related: ['hull-planking-decayed', 'hull-fastenings-wasted'],
    alsoCalled: ['caulking', 'payed seams', 'sprung plank', 'hood ends'],
  },
  {
    key: 'hull-fastenings-wasted',
    system: 'hull',
    title: 'Plank fastenings wasted or working',
    lookFor:
      'Rust weeps, popped stopping, dark or furry wood in a ring round each fastening and planks standing proud at butts are the signs. With the owner’s leave draw a sample from several strakes, including garboard, turn of bilge and under chain plates. Judge the shank, not the head: screws waist where plank meets frame. Bronze or brass that has turned pink and crumbles has lost its zinc.',
    observed: 'Of the fastenings drawn {location}, {count} had wasted to about {size} at the shank.',
    consequence:
      'The planking is held by what is left of the shanks. When enough have gone a plank end springs without warning in a seaway.',
    recommendation:
      'Have a shipwright draw a wider sample and refasten affected strakes beside the old holes with a metal that suits the others in the hull. Check bonding and anodes, since over-protected timber also loses its grip.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where planks move by hand or butts have sprung.',
    harms: ['structural-failure', 'flooding'],
    references: [],
    worksheets: ['hull-potential'],
    cautions: [underBoat],
    related: [
      'hull-seams-open',
      'hull-planking-decayed',
      'corrosion-overprotected',
      'corrosion-bonding-broken',
    ],
    alsoCalled: ['nail sick', 'iron sick', 'keel screws', 'refastening'],
  },
  {
    key: 'hull-marine-borers',
    system: 'hull',
    title: 'Marine borers in the underwater timber',
    lookFor:
      'Search bare patches: worn rudder heels, keel bottoms, the inside of the centreboard case and the mouths of through-hulls. Shipworm leaves a pin-hole at the surface and a wide lined tunnel behind; gribble eats the face away in shallow furrows. Tap for hollowness and probe gently. Old tunnels that are dry and empty may be long dead; fresh ones are wet and lined with white.',
    observed:
      'Borer holes were found in {item} {location}, {extent}. A wire entered {size} into one of them.',
    consequence:
      'Shipworm hollows the timber while its face stays whole, so strength and tightness may be lost far from the hole that is seen.',
    recommendation:
      'Have the timber opened to find how far they run, replace what is riddled and keep the hull ashore long enough to kill what lives. Restore an unbroken coat of antifouling or sheathing, also inside the centreboard case.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use in planking, stem or garboard.',
    lower: 'Next lay-up in a sacrificial worm shoe.',
    harms: ['structural-failure', 'flooding'],
    references: [],
    worksheets: ['sounding-map'],
    cautions: [underBoat],
    related: ['hull-planking-decayed'],
    alsoCalled: ['teredo', 'shipworm', 'gribble', 'worm'],
  },
);
