/** What every look into a mains installation begins with. */
export const mains =
  'Mains can kill. Unplug at the pontoon first, switch off inverter and generator, and prove dead before a cover is opened; leave live testing to a qualified electrician.';

/** Leakage into the water kills swimmers. */
export const nobodyInTheWater =
  'Never test with a person in the water, and never enter the water in a marina to look for a fault.';
