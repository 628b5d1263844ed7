import { firmRoleLabels, partyRoleLabels } from '@garboard/trade/vocabulary';

/** What each role is called, a firm's or a party's. */
export const roleWords: Readonly<Record<string, string>> = { ...firmRoleLabels, ...partyRoleLabels };
