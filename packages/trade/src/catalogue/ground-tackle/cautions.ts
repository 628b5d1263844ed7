/** Chain that can run out. */
export const chainRunning =
  'Isolate the windlass, stop the chain, and keep hands and feet clear of hawse, gypsy and the bight: chain can run out at once.';

/** Weight over the bow. */
export const liftedAnchor =
  'Lash the anchor before working at it over the bow, and stand clear below when the boat is ashore.';
