import { entries } from '../entry.ts';

const notByTrial =
  'Never try an extinguisher by letting some out: it will not seal again. Keep the nozzle away from faces and the pin in.';

export const extinguisherEntries = entries(
  {
    key: 'fire-extinguisher-nozzle-blocked',
    system: 'fire-safety',
    title: 'Extinguisher nozzle blocked, or monthly checks not made',
    lookFor:
      'Take each extinguisher off its bracket. Look into the nozzle and down the hose with a lamp: mud-dauber wasps, spiders, salt, corrosion and paint block them. See the gauge in the green, pin and seal in place, body free of rust at the foot, and the tag signed. Weigh one that has no gauge, and turn and shake a powder one to feel that the powder moves. A dusty body alone is harmless.',
    observed:
      'The extinguisher {location} has its nozzle blocked by {item}. The last check on its tag is dated {date}.',
    consequence:
      'In a fire the first minute counts. An extinguisher with a stopped nozzle discharges nothing, or bursts its hose in the user’s hand.',
    recommendation:
      'Put it out of use and replace it at once; have it serviced by a competent extinguisher company or discard it. Check every extinguisher each month: nozzle clear, gauge, pin and seal, corrosion, weight, and powder loosened as its maker says. Write the date on the tag.',
    urgency: 'before-use',
    lower:
      'Within 30 days when it is clear and full and only the monthly record is missing, or when enough good ones remain.',
    harms: ['fire-explosion', 'unlawful'],
    references: ['NFPA 10', 'ISO 9094', 'ABYC A-4', '33 CFR 175 subpart E'],
    worksheets: ['carriage'],
    cautions: [notByTrial, 'A rusted body under pressure can burst: do not knock it or force the handle.'],
    related: ['fire-extinguisher-expired', 'fire-extinguishers-too-few'],
    diagram: 'extinguisher-ready',
    alsoCalled: ['mud wasp nest', 'dry powder', 'powder caked', 'inspection tag'],
  },
  {
    key: 'fire-extinguisher-expired',
    system: 'fire-safety',
    title: 'Extinguisher past its life or service date',
    lookFor:
      'Read the date of manufacture stamped on the base, the service label and the approval mark, and compare the gauge. A disposable one has a life of its own; a refillable one a service interval. Two digits stand for the year. A needle in the green does not prove the age.',
    observed: 'The extinguishers {location}, {count} in number, are dated {date} and out of date.',
    consequence:
      'Powder cakes, seals leak and gauges stick with age. One that is too old counts for nothing with an authority or an insurer.',
    recommendation:
      'Replace disposable extinguishers at the end of their life, and have refillable ones serviced by a competent company. Carry the number and size that the flag’s rules require.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when no serviceable extinguisher is aboard.',
    harms: ['fire-explosion', 'unlawful'],
    references: ['33 CFR 175 subpart E', 'NFPA 10', 'ABYC A-4', 'ISO 9094'],
    worksheets: ['carriage'],
    cautions: [notByTrial],
    related: ['fire-extinguisher-nozzle-blocked', 'fire-extinguishers-too-few'],
    alsoCalled: ['disposable', 'non-rechargeable', '12 years', 'service tag', 'Halon'],
  },
  {
    key: 'fire-extinguishers-too-few',
    system: 'fire-safety',
    title: 'Too few extinguishers, too small, or in the wrong place',
    lookFor:
      'Count and read the ratings, and compare with the boat’s length, engine and accommodation. Stand in the galley, in each cabin and at the helm and reach for one: it should not hang over the cooker or deep in a locker. Each should be in its bracket and seen or marked. A fixed system in the engine space may count towards the number in some rules.',
    observed:
      'Aboard are {count} extinguishers. None can be reached from {item} without passing the place most likely to burn.',
    consequence: 'A fire that cannot be attacked within seconds from where the crew stands is usually lost.',
    recommendation:
      'Fit more or larger extinguishers to the flag’s rules and the boat’s own plan: by the exit of the galley, by the helm, outside the engine space, and one to reach from the sleeping cabins.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when the number is below the law or none is aboard.',
    lower: 'At the next lay-up for places that are merely awkward.',
    harms: ['fire-explosion', 'unlawful'],
    references: ['33 CFR 175 subpart E', '46 CFR 25.30-20', 'ISO 9094', 'ABYC A-4'],
    worksheets: ['carriage'],
    cautions: [notByTrial],
    related: [
      'fire-extinguisher-expired',
      'fire-blanket-missing',
      'fire-port-missing',
      'accommodation-escape-blocked',
    ],
    alsoCalled: ['5-B', '20-B', 'B-I', 'mounting bracket'],
  },
);
