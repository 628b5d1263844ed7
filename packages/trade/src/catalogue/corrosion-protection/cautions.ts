/** For whoever looks at anodes and fittings below the waterline ashore. */
export const chocked =
  'Do not go beneath a boat hanging in slings: examine it chocked, with the engine locked off when near the propeller.';
