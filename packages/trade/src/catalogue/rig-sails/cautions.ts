/** Going up a mast. */
export const aloft =
  'Go aloft only on a rig you trust, in a sound harness on two separate halyards, never on snap shackles, with a practised hand on deck; otherwise look with a camera or have the mast unstepped.';

/** Rig under load. */
export const rigUnderLoad =
  'Do not slacken, hammer or pull on a stay that is suspect: the mast may come down. Keep people from under it.';

/** Heads and hands below the mast. */
export const belowTheMast =
  'Keep everybody clear of the deck below while somebody works aloft; tools on lanyards.';
