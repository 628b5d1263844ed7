/** Cautions that several entries share, so that they read the same everywhere. */
export const underBoat =
  'Go under a boat ashore only where the yard has blocked and shored her; never under one hanging in slings, and leave shores and cradle pads to the yard.';

export const seizedSeacock =
  'Do not force a seacock or lean on a suspect fitting while she is afloat: it may come away. Have a tapered plug to hand and the pumps working first.';

export const closedSpaces =
  'Air closed bilges, voids and tanks before leaning in: rusting steel uses up the oxygen, and gas or petrol vapour lies low. Nobody enters a tank without the precautions for confined spaces.';

export const pinchedHands =
  'Keep hands out of the quadrant, sheaves and rams while anyone is at the wheel, and disconnect the autopilot so that it cannot start by itself.';

export const batteriesAndTerminals =
  'Take off rings and watch, and isolate the circuit where it can be done: a tool across battery terminals burns and can set off the gas.';

export const bilgeBeforePumping =
  'Look and sniff before pumping or switching: fuel or gas in the bilge can be lit by a switch, and oily water must not go overboard.';
