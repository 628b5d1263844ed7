/** The temperature ratings of 33 CFR 183.425, Table 5, as choices of a form. */
export const insulationChoices = {
  '60': '60 °C',
  '75': '75 °C',
  '80': '80 °C',
  '90': '90 °C',
  '105': '105 °C',
  '125': '125 °C',
  '200': '200 °C',
} as const;

const thin = {
  '18 AWG': '18 AWG',
  '16 AWG': '16 AWG',
  '14 AWG': '14 AWG',
  '12 AWG': '12 AWG',
  '10 AWG': '10 AWG',
  '8 AWG': '8 AWG',
  '6 AWG': '6 AWG',
  '4 AWG': '4 AWG',
} as const;

const thick = {
  '2 AWG': '2 AWG',
  '1 AWG': '1 AWG',
  '1/0 AWG': '1/0 AWG',
  '2/0 AWG': '2/0 AWG',
  '3/0 AWG': '3/0 AWG',
  '4/0 AWG': '4/0 AWG',
} as const;

/** The sizes of Table 5. */
export const tableChoices = { ...thin, '3 AWG': '3 AWG', ...thick } as const;

/** The sizes of the voltage-drop tables, which leave 3 AWG out. */
export const awgChoices = { ...thin, ...thick } as const;
