import type { DueDefaults } from '@garboard/trade/due-dates';

/** How a firm reckons due dates, from its row. */
export const dueDefaultsOf = (firm: DueDefaults): DueDefaults => ({
  beforeUseDays: firm.beforeUseDays,
  layupRequiresClearing: firm.layupRequiresClearing,
  layupDays: firm.layupDays,
  layupDay: firm.layupDay,
});
