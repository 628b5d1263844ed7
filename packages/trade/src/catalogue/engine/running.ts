import { entries } from '../entry.ts';

const rotating =
  'Run only with guards in place, hands, hair and sleeves clear of belts and shafts, and someone at the stop.';

export const runningEntries = entries(
  {
    key: 'engine-smoke-overload',
    system: 'engine',
    title: 'Smoke, or the engine does not reach its rated speed',
    lookFor:
      'Warm the engine, then run at full throttle in deep water long enough to settle, and note speed, temperatures and colour of smoke: black for too much fuel or too little air, blue for oil, white for unburnt fuel or water. A fouled bottom or too much propeller also hold it down. Steam on a cold morning clears in minutes. Compare the rated speed with the maker’s plate.',
    observed: 'At full throttle the {side} engine reached {reading}, short of its rated speed, and smoked.',
    consequence:
      'An overloaded engine burns its valves and pistons, and lays soot in the exhaust. White smoke may be the first sign of water inside.',
    recommendation:
      'Clean bottom and propeller first, then have an engineer check air, fuel, timing and compression, and the propeller’s pitch, in that order.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when it overheats, knocks or uses water.',
    harms: ['loss-of-control', 'deterioration'],
    references: [],
    worksheets: ['engine-readings', 'propeller-slip', 'speed-runs'],
    cautions: [
      rotating,
      'Full throttle only in open water, with the owner’s leave and a look at the temperature throughout.',
    ],
    related: [
      'engine-compression-uneven',
      'exhaust-elbow-corroded',
      'engine-cooling-flow',
      'propeller-wrong-load',
    ],
    alsoCalled: ['wide open throttle', 'overpropped', 'black smoke', 'RPM', 'white smoke', 'blue smoke'],
  },
  {
    key: 'engine-compression-uneven',
    system: 'engine',
    title: 'Compression uneven or low',
    lookFor:
      'By an engineer, engine warm, injectors or plugs out, throttle open, ignition or fuel stopped: a gauge on each cylinder in turn over several strokes, and a wet test of a low one. The worst against the best counts more than any single figure; keep gauge, battery and warmth the same. All low and even is wear, one low is a valve, ring or gasket.',
    observed:
      'Compression of the {side} engine was measured cylinder by cylinder; the lowest reading was {reading}, in {item}.',
    consequence:
      'An engine with a weak cylinder starts badly and overloads the rest. A failing gasket lets in water.',
    recommendation:
      'Have an engineer find the cause by a leak-down or wet test and repair it before the engine is depended on; put off long passages until then.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when water or a gasket failure is found.',
    harms: ['loss-of-control', 'deterioration'],
    references: [],
    worksheets: ['engine-readings'],
    cautions: [
      rotating,
      'Fuel stopped and ignition disabled by the engineer: diesel injector spray pierces skin, plug sparks light petrol vapour.',
    ],
    related: ['engine-smoke-overload', 'engine-oil-emulsified'],
    alsoCalled: ['compression test', 'cylinder pressure', 'blow-by'],
  },
  {
    key: 'engine-mounts-perished',
    system: 'engine',
    title: 'Engine mountings perished, loose or the bed cracked',
    lookFor:
      'Look at each foot for rubber parted, swollen by oil or sagged, and a slack nut. Watch them while an assistant takes gear ahead and astern: all should move alike. Lever gently. Look at the bed for cracks and fastenings working, and at the coupling for misalignment marks. Rubber with surface crazing only may be good.',
    observed: 'The engine mounting {location} is perished and moved {size} when gear was taken.',
    consequence:
      'The shaft runs out of line and wears its bearing and seal; a broken mounting lets the engine jump and break its pipes.',
    recommendation:
      'Have an engineer renew the mountings as a set, repair the bed and realign the shaft afloat.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when a mounting has broken or the bed is coming away.',
    lower: 'At the next lay-up when they are soft but whole.',
    harms: ['loss-of-control', 'flooding', 'structural-failure', 'deterioration'],
    references: ['ABYC P-4'],
    worksheets: ['shaft-wear'],
    cautions: [rotating, 'Moor well, fore and aft, before gear is taken alongside.'],
    related: [
      'engine-belts-guards',
      'engine-oil-leak',
      'shaft-misaligned',
      'shaft-coupling-insecure',
      'hull-stringers-decayed',
    ],
    alsoCalled: ['engine feet', 'engine bed', 'shaft alignment', 'motor mounts'],
  },
  {
    key: 'engine-belts-guards',
    system: 'engine',
    title: 'Belts worn or belts and shafts without guards',
    lookFor:
      'Engine off and key out: look at the inner face for cracks and glazing and for black dust about the pulleys, press the longest run. Check pulleys with a straight edge. Look whether a person who leans in or sleeps near could touch belt, pulley or turning shaft. A little dust from a new belt is normal.',
    observed: 'The belt of {item} is worn {extent}, and no guard covers it {location}.',
    consequence:
      'A broken belt stops cooling and charging together. A bare one catches fingers, hair or clothes.',
    recommendation:
      'Renew and tension the belt, align the pulleys, fit guards over belts and shafts, and carry spares.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use where a turning shaft or belt can be touched where people go with the engine running.',
    harms: ['injury', 'loss-of-control'],
    references: [],
    worksheets: [],
    cautions: [
      rotating,
      'Key out and battery isolated before hands go near: engines can be started from the helm.',
    ],
    related: ['engine-mounts-perished', 'dc-conductors-too-small', 'shaft-turning-unguarded'],
    alsoCalled: ['fan belt', 'V-belt', 'guard', 'alternator belt'],
  },
  {
    key: 'engine-neutral-start',
    system: 'engine',
    title: 'Engine can be started in gear, or its stop does not work',
    lookFor:
      'With lines doubled and people clear, try to start in ahead and astern: nothing should turn. Then see that the stop works at the helm and at the engine, and that a kill cord, where fitted, stops it. Try the alarms too.',
    observed: 'The {side} engine could be started with the control at ahead or astern.',
    consequence:
      'A boat that leaps ahead when started injures people and hits what is near. An engine that will not stop cannot be dealt with in a fire.',
    recommendation:
      'Have an engineer renew or adjust the neutral switch, the stop and the kill cord, and try them again. Show the crew the stop at the engine.',
    urgency: 'before-use',
    lower: 'Within 30 days for a missing second stop on an engine that stops reliably by the first.',
    harms: ['injury', 'loss-of-control', 'fire-explosion'],
    references: ['ISO 11547', 'ABYC P-14'],
    worksheets: [],
    cautions: [
      rotating,
      'Clear the water of swimmers and dinghies first; never stand beside the propeller of a boat ashore.',
    ],
    related: ['engine-belts-guards', 'outboard-cut-off-missing'],
    alsoCalled: [
      'start in gear protection',
      'neutral safety switch',
      'kill cord',
      'lanyard',
      'engine cut-off',
      'outboard',
    ],
  },
);
