/** Anything that can be turned from the helm. */
export const machineryStopped =
  'Stop the engine, take the key or open the battery switch, and tell everybody aboard before touching shaft, leg or propeller.';

/** Looking at a gland or coupling with the shaft turning. */
export const turningShaft =
  'Keep hands, sleeves, hair and torch cords away from the turning shaft; look with the engine in gear only when well moored and with somebody at the controls.';
