import type { CatalogueEntry } from '@garboard/contract/catalogue';
import { fillSlots } from '@garboard/trade/catalogue/slots';
import type { Harm, System, Urgency } from '@garboard/trade/vocabulary';

/** What a finding begins with, in the fields of its form. */
export interface StartedFinding {
  system: System;
  title: string;
  observed: string;
  consequence: string;
  recommendation: string;
  urgency: Urgency;
  withinDays: string;
  harms: Harm[];
  /** One a line. */
  references: string;
  catalogueKey: string;
  catalogueVersion: number;
}

/** A finding begun from a known defect, its slots filled; those without words stay in sight as `{location}`. */
export function startFrom(
  entry: CatalogueEntry,
  slots: Readonly<Record<string, string>> = {},
): StartedFinding {
  return {
    system: entry.system,
    title: entry.title,
    observed: fillSlots(entry.observed, slots),
    consequence: fillSlots(entry.consequence, slots),
    recommendation: fillSlots(entry.recommendation, slots),
    urgency: entry.urgency,
    withinDays: entry.withinDays === null ? '' : String(entry.withinDays),
    harms: entry.harms,
    references: entry.references.join('\n'),
    catalogueKey: entry.key,
    catalogueVersion: entry.version,
  };
}
