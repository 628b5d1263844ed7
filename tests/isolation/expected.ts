import type { Route } from '@garboard/contract/routes';
import { type Action, grantFor } from '@garboard/trade/permissions';
import { firmRoles } from '@garboard/trade/vocabulary';
import type { Asker, Place } from './world.ts';

/** 401, 403, 404, 422 for what a body may not name, or that the question of access is passed: whatever else the request may come to. */
export type Outcome = 401 | 403 | 404 | 422 | 'passes';

/** By the noun of a path, or a route's own name: which line of the permission table says that it is there at all. */
const seenBy: Record<string, Action> = {
  surveys: 'survey.read',
  vessels: 'vessel.read',
  findings: 'finding.read',
  photos: 'photo.read',
  worksheets: 'worksheet.read',
  reports: 'report.read',
  // Whoever sees the finding is told that the evidence isn't for them, and of equipment that the report prints it.
  clearances: 'finding.read',
  inventory: 'survey.read',
  uploads: 'photo.write',
  imports: 'finding.import',
  'review-comments': 'review.read',
  'finding-comments': 'comment.read',
  'share-links': 'report.share',
  quotations: 'quotation.read',
  visits: 'visit.read',
  invoices: 'invoice.read',
  firms: 'firm.read',
  'firm-exports': 'firm.read',
  catalogue: 'catalogue.read',
  restoreFinding: 'finding.deleted.read',
  listDeletedFindings: 'finding.deleted.read',
  // Without the right there are no documents.
  listReports: 'report.read',
  // Its body names the vessel.
  createSurvey: 'vessel.read',
  putCatalogueEntry: 'catalogue.read',
};

const isStaff = (asker: Asker) => (firmRoles as readonly string[]).includes(asker.role);

/** Whether the table grants this to who asks, of this place. */
export function granted(action: Action, asker: Asker, place: Place, noun: string): boolean {
  const grant = grantFor(action, asker.role);
  if (grant === null) return false;
  if (isStaff(asker)) return grant === 'decides' ? place.decidedBy === 'surveyor' : grant === 'yes';
  const sees = asker.released && !place.held;
  if (grant === 'yes') return true;
  if (grant === 'client') return asker.client;
  // A list over a whole survey holds the findings given to them, or none.
  if (grant === 'assigned') return sees && (asker.assigned || noun === 'surveys');
  if (grant === 'decides') return sees && place.decidedBy === 'insurer';
  return sees;
}

/** What isn't a matter of roles, each with its reason. */
const special: Record<string, (asker: Asker, place: Place) => Outcome | undefined> = {
  // Who signs the report doesn't review it.
  decideReview: (asker) => (asker.role === 'surveyor' ? 403 : undefined),
  // Only its author takes a comment back.
  removeFindingComment: (asker) => (asker.role !== 'surveyor' ? 403 : undefined),
};

/** The noun that a route with an id is about: its own name where `seenBy` has it, else the path's. */
export const nounOf = (name: string, route: Route): string =>
  name in seenBy ? name : (route.path.split('/')[2] ?? '');

/** Whether a route is about something of a firm's, named in its path. */
export const isAboutPlace = (name: string, route: Route): boolean =>
  route.access === 'signed-in' &&
  route.permission !== 'own-account' &&
  (/\{(id|key)\}/.test(route.path) || name in seenBy) &&
  nounOf(name, route) in seenBy;

/** What the permission table says about a request of a signed-in person about something of this place. */
export function expected(name: string, route: Route, asker: Asker, place: Place): Outcome {
  const noun = nounOf(name, route);
  const may = (action: Action) => granted(action, asker, place, noun);
  // Under a key of another firm's each firm keeps an entry of its own.
  const ownFirm = isStaff(asker) && (place.name !== 'other firm' || name === 'putCatalogueEntry');
  const action = seenBy[noun];
  if (!(ownFirm || (place.theirs && !isStaff(asker))) || !action || !may(action)) {
    return name === 'createSurvey' ? 422 : 404;
  }
  if (!may(route.permission as Action)) return 403;
  return special[name]?.(asker, place) ?? 'passes';
}

/** What of one's own account isn't for everybody; undefined for all the rest. */
export function ownExpected(name: string, asker: Asker): Outcome | undefined {
  // Asked for as an insurer: nobody gets messages in a role that isn't theirs.
  return name === 'createWebhookEndpoint' && asker.role !== 'insurer' ? 403 : undefined;
}
