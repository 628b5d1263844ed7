import type { FirmRole, PartyRole } from './vocabulary.ts';

/**
 * Who may do what, as data. Anything not named here is refused. What anyone may see at all is settled before, by
 * `core/access/scopes.ts`, from the same grants.
 *
 * - `yes`: whenever the survey is visible to them.
 * - `released`: once what the firm issued has been released to that party and isn't withheld.
 * - `assigned`: of what is released, a finding that this yard was asked to put right, and what belongs to it.
 * - `client`: the party that pays for the survey and so owns the report.
 * - `decides`: only those whom the survey names as deciding on evidence.
 */
export type Grant = 'yes' | 'released' | 'assigned' | 'client' | 'decides';
export type Role = FirmRole | PartyRole;

const staff = { principal: 'yes', surveyor: 'yes', office: 'yes' } as const;
const writers = { principal: 'yes', surveyor: 'yes' } as const;
const principal = { principal: 'yes' } as const;
const everyone = {
  ...staff,
  owner: 'yes',
  buyer: 'yes',
  broker: 'yes',
  insurer: 'yes',
  lender: 'yes',
  yard: 'yes',
} as const;
const readers = {
  owner: 'released',
  buyer: 'released',
  broker: 'released',
  insurer: 'released',
  lender: 'released',
} as const;
/** Any of these may be the one who pays; a yard never is. */
const client = {
  owner: 'client',
  buyer: 'client',
  broker: 'client',
  insurer: 'client',
  lender: 'client',
} as const;

/** Who opens, lifts or moves the boat, and those for whom she is looked at. */
const aboard = { owner: 'yes', buyer: 'yes', broker: 'yes', yard: 'yes' } as const;

export const permissions = {
  'firm.read': staff,
  'firm.edit': principal,
  'firm.export': principal,
  'member.read': staff,
  'member.invite': principal,
  'signing-key.read': staff,
  'signing-key.write': principal,
  'vessel.read': everyone,
  'vessel.write': staff,
  'survey.read': everyone,
  'survey.create': staff,
  'survey.edit': staff,
  'survey.events.read': staff,
  'photo.read': { ...staff, ...readers, yard: 'assigned' },
  'photo.write': staff,
  'photo.original.read': staff,
  'finding.read': { ...staff, ...readers, yard: 'assigned' },
  'finding.write': writers,
  'worksheet.read': { ...staff, ...readers, yard: 'assigned' },
  'worksheet.write': writers,
  'catalogue.read': staff,
  'catalogue.write': writers,
  'coverage.read': staff,
  'coverage.write': writers,
  'inventory.read': staff,
  'inventory.write': staff,
  'party.read': { ...staff, ...client, owner: 'yes' },
  'party.invite': staff,
  'party.release': { ...staff, ...client },
  'party.remove': staff,
  'party.invite-yard': { ...client, owner: 'released' },
  'finding.assign-yard': { ...staff, ...client, owner: 'released' },
  'finding.deleted.read': staff,
  'finding.import': writers,
  'finding.withdraw': writers,
  'finding.preview': staff,
  'report.preview': staff,
  'report.issue': writers,
  'review.read': staff,
  'review.ask': writers,
  // Of these, who neither asked nor signs the report: `core/reviews`.
  'review.decide': writers,
  'review.comment': writers,
  'report.share': { ...staff, ...client },
  'report.read': { ...staff, ...readers },
  'evidence.send': { owner: 'released', yard: 'assigned' },
  'evidence.read': { ...staff, owner: 'released', yard: 'assigned', insurer: 'released', buyer: 'released' },
  // The visit that looks at findings again; what it clears at once is decided under `evidence.decide`.
  'finding.re-inspect': writers,
  'finding.extend': { ...staff, insurer: 'decides' },
  'comment.read': { ...staff, ...readers, yard: 'assigned' },
  'comment.write': { ...staff, ...readers, yard: 'assigned' },
  'rates.read': staff,
  'rates.write': principal,
  'terms.read': staff,
  'terms.write': principal,
  // A draft is the firm's; what was sent is the client's to read and to decide on.
  'quotation.read': { ...staff, ...client },
  'quotation.write': staff,
  'quotation.decide': client,
  'visit.read': { ...staff, ...aboard },
  'visit.write': staff,
  // Of these, who was asked: `core/visits`.
  'visit.answer': aboard,
  'invoice.read': { ...staff, ...client },
  'invoice.write': staff,
  'release.read': staff,
  'release.give': principal,
  'evidence.decide': { principal: 'decides', surveyor: 'decides', insurer: 'decides' },
} as const satisfies Record<string, Partial<Record<Role, Grant>>>;

export type Action = keyof typeof permissions;

/** What a role is granted for an action, or `null` when it is refused; a role not known here is refused all. */
export function grantFor(action: Action, role: Role): Grant | null {
  const grants: Partial<Record<Role, Grant>> = permissions[action];
  return Object.hasOwn(grants, role) ? (grants[role] ?? null) : null;
}

/** Those for whom a survey is made, and the yard that does the work, see what is issued unless the firm says otherwise. */
export const releasedByDefault: readonly PartyRole[] = ['owner', 'buyer', 'yard'];
