import { entries } from '../entry.ts';

export const deckFittingsEntries = entries(
  {
    key: 'deck-fitting-no-backing',
    system: 'deck',
    title: 'Cleat, winch, windlass or track bolted without a backing plate',
    lookFor:
      'Get at the underside of every fitting that takes load. Small washers pulled into the laminate, cracked gelcoat fanning from the base above, rust runs and a fitting that lifts when levered are the signs. A bonded solid pad with large washers may be as good as a metal plate. Screws alone are no fastening for a load.',
    observed:
      'Fastenings of {item} {location} have small washers only and no backing plate. The deck round the base is cracked {extent}.',
    consequence:
      'The load is carried by a few square centimetres of laminate under each washer. The fitting works, the bedding leaks, and in a snatch it may be torn from the deck and fly.',
    recommendation:
      'Fit a backing plate or bonded pad well larger than the base, bolts of full size and fresh bedding. Where the deck is cored, remove core about the bolts and fill with solid material first.',
    urgency: 'within-days',
    withinDays: 60,
    raise:
      'Before next use where the fitting already moves is used for mooring, anchoring or towing, or people clip on to it.',
    lower: 'Next lay-up for a lightly loaded fitting that is firm and dry.',
    harms: ['injury', 'loss-of-control', 'structural-failure'],
    references: ['ISO 15084', 'ABYC H-40'],
    worksheets: ['rode'],
    cautions: [
      'Lever gently and stand clear of the line of pull: a fitting that lets go under load can kill.',
    ],
    related: ['cored-deck-wet-fittings', 'cored-bolts-crushing', 'hull-gelcoat-cracks'],
    diagram: 'backing-plate',
    alsoCalled: ['backing pad', 'doubler', 'mooring cleat', 'strong point', 'jackstay eye', 'davit'],
  },
  {
    key: 'deck-stanchion-base-loose',
    system: 'deck',
    title: 'Guardrail stanchion loose at its base',
    lookFor:
      'Push each stanchion inboard and outboard at the top with steady force and watch the base, not the tube. Look for crescent cracks at the outer edge, a set screw or split pin missing at the socket, rust at the weld and stains below deck. Movement of the tube in its socket only is wear; movement of the base is a failing deck or fastening.',
    observed:
      'Stanchions {location} move at the base when pushed; {count} are affected. The deck beneath is cracked and stained inside.',
    consequence:
      'A person thrown against the guardrail puts a long lever on the base. It may bend over or come out, and the person goes with it.',
    recommendation:
      'Unbolt, dry and repair the deck, replace wet core with solid filling, and refit on a backing plate with through-bolts and new bedding. Replace bases with cracked welds. Proof each by hand afterwards.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where a base is nearly free or the boat goes to sea shorthanded.',
    harms: ['injury'],
    references: ['ISO 15085', 'ABYC H-41'],
    worksheets: [],
    cautions: ['Push from inside the rail with a firm footing; never lean out over it to test it.'],
    related: ['deck-guard-wire-corroded', 'cored-deck-wet-fittings', 'deck-fitting-no-backing'],
    alsoCalled: ['lifeline stanchion', 'guard rail', 'pulpit', 'pushpit'],
  },
  {
    key: 'deck-non-slip-worn',
    system: 'deck',
    title: 'Non-slip worn smooth where people step',
    lookFor:
      'Wet the side deck, foredeck, coach-roof edge, transom steps and companion treads, and try them with the sole of the shoe. Look for polished patterns, painted-over texture and grit washed out. Check that footrails and handholds are within reach along the way forward.',
    observed: 'The non-slip surface {location} is worn smooth {extent} and slippery when wet.',
    consequence: 'People lose their footing where the boat moves most, and fall on deck or overboard.',
    recommendation:
      'Renew the surface with a non-slip coating or bonded sheet made for decks, and treat steps and hatch lids also.',
    urgency: 'next-layup',
    raise: 'Within days at transom steps, the mast and the foredeck of a boat used offshore.',
    harms: ['injury'],
    references: ['ISO 15085'],
    worksheets: [],
    cautions: [],
    related: ['deck-stanchion-base-loose', 'accommodation-handholds-missing'],
    alsoCalled: ['nonskid', 'anti-slip', 'deck paint'],
  },
  {
    key: 'deck-guard-wire-corroded',
    system: 'deck',
    title: 'Guardrail wires corroded, worn or badly ended',
    lookFor:
      'Cut back split covering at the ends where the owner allows: rust stains beneath white plastic show wire that cannot be seen. Look for cracked swages, open pelican hooks, worn rings, chafed lashings and wire kinked through stanchions. Lashings should be of modest length and many turns. A brown bloom on bare stainless wire that wipes away is only surface stain.',
    observed: 'Guardrail wires {location} are rusted at the terminals and the covering has split {extent}.',
    consequence:
      'Covered wire holds salt water and rusts unseen at the ends, so it parts just when somebody falls on it.',
    recommendation:
      'Replace the wires with uncovered ones, or with line made for the purpose, of a size suited to the boat, with new terminals. Close gates with a hook that cannot open by itself.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where strands are broken or a terminal is cracked.',
    lower: 'Next lay-up where only the covering is unsightly and the ends are clean.',
    harms: ['injury'],
    references: ['ISO 15085', 'ABYC H-41'],
    worksheets: ['rigging-wire'],
    cautions: ['Broken strands cut: wear gloves and do not run a bare hand along the wire.'],
    related: ['deck-stanchion-base-loose'],
    alsoCalled: ['lifelines', 'guard wires', 'pelican hook'],
  },
);
