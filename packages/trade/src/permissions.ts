import type { FirmRole, PartyRole } from './vocabulary.ts';

/**
 * Who may do what, as data. Anything not named here is refused. What anyone may see at all is settled before, by
 * `core/access/scopes.ts`.
 *
 * - `yes`: whenever the survey is visible to them.
 * - `released`: once what the firm issued has been released to that party.
 * - `decides`: only those whom the survey names as deciding on evidence.
 */
export type Grant = 'yes' | 'released' | 'decides';
export type Role = FirmRole | PartyRole;

const staff = { principal: 'yes', surveyor: 'yes', office: 'yes' } as const;
const writers = { principal: 'yes', surveyor: 'yes' } as const;
const readers = {
  owner: 'released',
  buyer: 'released',
  broker: 'released',
  insurer: 'released',
  lender: 'released',
} as const;

export const permissions = {
  'vessel.write': staff,
  'survey.create': staff,
  'survey.edit': staff,
  'survey.events.read': staff,
  'photo.write': staff,
  'photo.original.read': staff,
  'finding.write': writers,
  'worksheet.write': writers,
  'catalogue.read': staff,
  'catalogue.write': writers,
  'coverage.read': staff,
  'coverage.write': writers,
  'inventory.read': staff,
  'inventory.write': staff,
  'party.read': { ...staff, owner: 'yes' },
  'party.invite': staff,
  'party.release': staff,
  'party.remove': staff,
  'party.invite-yard': { owner: 'released' },
  'finding.withdraw': writers,
  'finding.preview': staff,
  'report.preview': staff,
  'report.issue': writers,
  'review.read': staff,
  'review.ask': writers,
  // Of these, who neither asked nor signs the report: `core/reviews`.
  'review.decide': writers,
  'review.comment': writers,
  'report.read': { ...staff, ...readers },
  'evidence.send': { owner: 'released', yard: 'released' },
  'evidence.read': { ...staff, owner: 'released', yard: 'released', insurer: 'released', buyer: 'released' },
  'evidence.decide': { principal: 'decides', surveyor: 'decides', insurer: 'decides' },
} as const satisfies Record<string, Partial<Record<Role, Grant>>>;

export type Action = keyof typeof permissions;

/** What a role is granted for an action, or `null` when it is refused. */
export function grantFor(action: Action, role: Role): Grant | null {
  return (permissions[action] as Partial<Record<Role, Grant>>)[role] ?? null;
}

/** Those for whom a survey is made, and the yard that does the work, see what is issued unless the firm says otherwise. */
export const releasedByDefault: readonly PartyRole[] = ['owner', 'buyer', 'yard'];
