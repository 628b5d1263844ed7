import { entries } from '../entry.ts';
import { chocked } from './cautions.ts';

export const bondingEntries = entries(
  {
    key: 'corrosion-bonding-broken',
    system: 'corrosion-protection',
    title: 'Bonding conductor broken, or fittings left out of it',
    lookFor:
      'Measure with a meter from the anode to each underwater fitting that is meant to be bonded, and note the resistance. Look at ends in the bilge: green copper, a ring terminal under a painted nut, a strap to the shaft with no brush. First find out what the boat’s scheme is: some are bonded throughout and some on purpose not at all; a mixture protects neither.',
    observed: 'The bonding between the anode and {item} {location} is broken; the meter read {reading}.',
    consequence:
      'A fitting outside the bond gets no protection from the anode. It can even waste faster where stray current crosses it.',
    recommendation:
      'Clean and remake the connections, renew wasted conductors, fit a shaft brush where the design has one, then measure the boat’s potential afloat. Do not add or remove bonding without a corrosion specialist’s word.',
    urgency: 'next-layup',
    raise: 'Within 60 days when the fitting left out is already pink, pitted or thin.',
    harms: ['deterioration', 'flooding'],
    references: ['ABYC E-2', 'ABYC E-11'],
    worksheets: ['hull-potential'],
    cautions: [
      chocked,
      'Shore power unplugged before bonding conductors are undone: one may be carrying a fault.',
    ],
    related: ['corrosion-anode-wasted', 'corrosion-stray-current', 'ac-earth-missing', 'seacock-dezincified'],
    alsoCalled: ['bonding wire', 'green wire', 'earth bonding', 'shaft brush'],
  },
  {
    key: 'corrosion-overprotected',
    system: 'corrosion-protection',
    title: 'Overprotection: too much anode for the hull’s material',
    lookFor:
      'Wood: soft, furry or bleached timber and white salts around bonded fittings and anode bolts inside. Aluminium: a potential more negative than the range for it, paint blistering in rings about the anode, magnesium fitted in salt water. Read the potential with a reference electrode before blaming the paint or rot alone.',
    observed:
      'The potential measured was {reading}, more negative than the range for the material. Damage is seen {location}, {extent}.',
    consequence:
      'Alkali made at the protected metal destroys the timber round fastenings and attacks aluminium; on steel it lifts paint.',
    recommendation:
      'Reduce the anode area or renew with a less active alloy until the potential lies in range. On timber, neutralise and repair by a shipwright and take fittings out of the bond as a corrosion specialist advises.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Within 30 days when timber about a through-hull fitting is soft.',
    harms: ['deterioration', 'flooding', 'structural-failure'],
    references: ['ABYC E-2'],
    worksheets: ['hull-potential', 'anode-life'],
    cautions: [chocked, 'Do not probe or work a fitting in softened wood while afloat: it may come out.'],
    related: [
      'corrosion-bonding-broken',
      'corrosion-anode-painted',
      'corrosion-mixed-metals',
      'hull-planking-decayed',
      'hull-fastenings-wasted',
    ],
    alsoCalled: ['delignification', 'over zincing', 'electrochemical decay', 'magnesium in salt water'],
  },
  {
    key: 'corrosion-mixed-metals',
    system: 'corrosion-protection',
    title: 'Copper or stainless steel in contact with aluminium',
    lookFor:
      'Under water and in the splash zone, look at aluminium where bronze, brass, stainless or copper touches it: seacocks, fastenings, propeller, wire earthed to it, and copper antifouling painted on it. White powder and blisters gather at the edge of the joint. Washers and sleeves of plastic should part them; paint over the joint does not.',
    observed:
      'A fitting of {material} is in direct contact with aluminium {location}; the aluminium has wasted {extent}.',
    consequence:
      'The aluminium is the anode of the pair. A small area of it beside a large noble one pits quickly and deeply.',
    recommendation:
      'Part the metals with insulating sleeves and bedding, or renew the fitting in a metal nearer to aluminium. Take off copper-bearing antifouling and use one made for aluminium. Measure the thickness left before building up pits.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Before launching when a through-hull fitting’s seat or the drive casting is eaten deeply.',
    harms: ['deterioration', 'flooding'],
    references: ['ABYC E-2', 'ABYC H-27'],
    worksheets: ['plate-thickness', 'hull-potential'],
    cautions: [chocked],
    related: [
      'corrosion-stern-drive-anodes',
      'corrosion-overprotected',
      'stern-drive-copper-paint',
      'hull-aluminium-poultice',
    ],
    alsoCalled: ['galvanic couple', 'dissimilar metals', 'copper antifouling on aluminium', 'aluminum'],
  },
);
