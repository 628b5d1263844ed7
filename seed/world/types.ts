import type { Cost } from '@garboard/trade/costs';
import type { Reached } from '@garboard/trade/coverage';
import type { BoatPlace } from '@garboard/trade/drawing/boat-places';
import type { ReleaseRule } from '@garboard/trade/engagement';
import type {
  AttendanceCondition,
  Decision,
  FindingState,
  FirmRole,
  Harm,
  PartyRole,
  Purpose,
  SurveyState,
  System,
  Urgency,
  Verdict,
} from '@garboard/trade/vocabulary';
import type { SceneKey } from '../scenes/index.ts';

/** EXIF orientation a camera would have stored; 6 and 8 are pictures taken with the camera on its side. */
export type Orientation = 1 | 3 | 6 | 8;

/** A picture to be drawn. Everything not given is chosen by `photoScenes` from the picture's number. */
export interface PhotoSpec {
  scene: SceneKey;
  caption: string;
  orientation?: Orientation;
  /** Store an invented mid-ocean position in the EXIF block, to prove that derivatives lose it. */
  gps?: boolean;
}

/** A line of an invoice; money in minor units. */
export interface InvoiceLine {
  text: string;
  amountMinor: number;
}

/** A yard's invoice, made into a one-page PDF by `invoicePdf`. `day` counts from the day of loading. */
export interface InvoiceSpec {
  number: string;
  from: string;
  fromAddress: string;
  to: string;
  vessel: string;
  day: number;
  currency: string;
  lines: InvoiceLine[];
}

/** One round of evidence for a finding. Days count from the day of loading (negative: past). */
export interface ClearanceSpec {
  sentBy: string;
  sentDay: number;
  statement: string;
  workDoneBy: string;
  workDoneDay: number;
  photos: PhotoSpec[];
  invoice?: InvoiceSpec;
  decision?: {
    decision: Decision;
    by: string;
    day: number;
    reason: string;
    /** With `accept-as-is`: within what, and the last day of it. */
    limit?: string;
    limitDay?: number;
  };
}

/** More time given for a finding. Days count from the day of loading. */
export interface ExtensionSpec {
  by: string;
  day: number;
  dueDay: number;
  reason: string;
}

export interface CommentSpec {
  by: string;
  day: number;
  text: string;
  visibleTo: PartyRole[];
}

export interface FindingSpec {
  key: string;
  system: System;
  position: BoatPlace;
  title: string;
  observed: string;
  consequence: string;
  recommendation: string;
  urgency: Urgency;
  /** Set if and only if urgency is `within-days`. */
  withinDays?: number;
  /** What putting it right may cost, in minor units. */
  cost?: Cost;
  harms: Harm[];
  references: string[];
  photos: PhotoSpec[];
  state: FindingState;
  /** What it asks for one by one. */
  items?: string[];
  clearances?: ClearanceSpec[];
  extensions?: ExtensionSpec[];
  comments?: CommentSpec[];
}

export interface AttendanceSpec {
  /** Days from the day of loading. */
  day: number;
  place: string;
  condition: AttendanceCondition;
}

export interface PartySpec {
  role: PartyRole;
  /** Key of a person. */
  person: string;
  /** Whether the issued report has been released to them. */
  released: boolean;
  /** Whether this one pays for the survey, and so owns the report. */
  pays?: true;
}

export interface SurveySpec {
  key: string;
  firm: string;
  vessel: string;
  purpose: Purpose;
  state: SurveyState;
  /** Key of the surveyor in charge. */
  surveyor: string;
  requestedBy: string;
  clearanceDecidedBy: 'insurer' | 'surveyor';
  printCosts?: boolean;
  timeZone: string;
  scope: string;
  limitations: string;
  attendances: AttendanceSpec[];
  parties: PartySpec[];
  /** General views, the first one for the cover. */
  photos: PhotoSpec[];
  findings: FindingSpec[];
  /** Days from the day of loading; set for issued and closed surveys. */
  issuedDay?: number;
}

export interface VesselSpec {
  key: string;
  firm: string;
  name: string;
  hullNumber: string;
  officialNumber: string;
  builder: string;
  model: string;
  yearBuilt: number;
  hullMaterial: string;
  propulsion: string;
  lengthOverallM: number;
  beamM: number;
  draftM: number;
  displacementKg: number;
  homePort: string;
  /** ISO 3166 alpha-2. */
  flag: string;
}

export interface FirmSpec {
  key: string;
  name: string;
  address: string;
  email: string;
  phone: string;
  timeZone: string;
  currency: string;
}

/** What a firm charges, in minor units of its currency, and on what terms. */
export interface RatesSpec {
  firm: string;
  perLength: number;
  perHour: number;
  /** For a kilometre. */
  perDistance: number;
  minimum: number;
  releaseRule: ReleaseRule;
  paymentWords: string;
  terms: string;
}

/** How far the business around a survey has come. */
export interface EngagementSpec {
  /** Key of the survey. */
  survey: string;
  hours: number;
  /** Kilometres there and back. */
  travel: number;
  accepted: boolean;
  invoiced: boolean;
  paid?: 'whole' | 'half';
  visit?: {
    /** Days from the day of loading. */
    day: number;
    place: string;
    note: string;
    /** Roles of those asked. */
    asks: PartyRole[];
    /** Who has confirmed, by key, with what they said. */
    answers: Record<string, string>;
  };
}

export interface PersonSpec {
  key: string;
  name: string;
  email: string;
  /** Firm and role for those who work at a survey firm. */
  firm?: { key: string; role: FirmRole };
  /** Business the person acts for, where they don't act for themselves. */
  organisation?: string;
}

/** A worksheet filled in during a survey. */
export interface WorksheetSpec {
  /** Key of the survey. */
  survey: string;
  /** Key of the finding that it measures, if it belongs to one. */
  finding?: string;
  kind: string;
  title: string;
  inputs: Record<string, unknown>;
  /** What it must come to, so that it goes on fitting the finding's words. */
  verdict: Verdict;
}

/** How far a system was reached in a survey. */
export interface CoverageSpec {
  /** Key of the survey. */
  survey: string;
  system: System;
  reached: Reached;
  reason: string;
  lookedFrom: string;
}

/** A month so many months from loading, or a day of the calendar. */
export type MarkedDate = number | string;

/** A piece of equipment found during a survey. */
export interface EquipmentSpec {
  /** Key of the survey. */
  survey: string;
  system: System;
  name: string;
  maker?: string;
  serialNumber?: string;
  place?: string;
  count?: number;
  /** When it was made or fitted: of a month its first day. */
  made?: MarkedDate;
  /** Until when it is good: of a month its last day. */
  expires?: MarkedDate;
  note?: string;
}

export interface World {
  firms: FirmSpec[];
  people: PersonSpec[];
  vessels: VesselSpec[];
  surveys: SurveySpec[];
  worksheets: WorksheetSpec[];
  coverage: CoverageSpec[];
  inventory: EquipmentSpec[];
}
