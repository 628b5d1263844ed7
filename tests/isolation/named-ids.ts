import type { RouteName } from '@garboard/contract/routes';
import { newId } from '@garboard/db/ids';
import { gasTest, quotation, visit } from './bodies.ts';
import type { Named, NamedNoun } from './named-ids-world.ts';

/** A field of a body that names a record, and how a request looks that is right but for what it names. */
export interface NamingField {
  /** What it names. */
  noun: NamedNoun;
  /** Of which survey the request is: the one being written or the issued one. */
  of: 'draft' | 'issued';
  /** The route's path with the survey's own ids. */
  path: (own: Named) => string;
  /** The body or form with this id in the field. */
  body: (id: string, own: Named) => object;
  /** Whether it names what belongs to the firm, so that a colleague’s survey may name the same. */
  firmWide?: true;
  /** Whether the id is one that the client makes: taken already, it is refused with 409. */
  made?: true;
  /** Whether the record named is passed over in silence, as one of a list that isn't the caller’s. */
  ignored?: true;
  /** Names a part of the record itself; the same id elsewhere names another part, which stays as it is. */
  local?: true;
  /** Decided one by one: the answer says which were refused. */
  oneByOne?: true;
}

const at = (own: Named) => `/v1/surveys/${own.survey}`;
const words = { system: 'hull', title: 'T', urgency: 'note' };
const day = { date: new Date().toISOString().slice(0, 10), place: 'Hard 3', condition: 'ashore' };
const evidence = { statement: 'Done.', workDoneBy: 'Yard', workDoneOn: '2026-05-06' };

/** Every field of every body and form that names a record: `route field`, as the test reads them from the schemas. */
export const namingFields: Record<`${RouteName} /${string}`, NamingField> = {
  'createApiKey /firmId': {
    ...{ noun: 'firm', of: 'draft', firmWide: true, path: () => '/v1/api-keys' },
    body: (firmId) => ({ name: 'x', firmId, role: 'principal', access: 'read' }),
  },
  'createVessel /firmId': {
    ...{ noun: 'firm', of: 'draft', firmWide: true, path: () => '/v1/vessels' },
    body: (firmId) => ({ name: 'Sedge', firmId }),
  },
  'createWebhookEndpoint /firmId': {
    ...{ noun: 'firm', of: 'draft', firmWide: true, path: () => '/v1/webhook-endpoints' },
    body: (firmId) => ({
      firmId,
      role: 'principal',
      label: 'x',
      url: 'https://x.example/',
      kinds: ['report.issued'],
    }),
  },
  'createSurvey /vesselId': {
    ...{ noun: 'vessel', of: 'draft', firmWide: true, path: () => '/v1/surveys' },
    body: (vesselId) => ({ vesselId, purpose: 'condition' }),
  },
  'createSurvey /surveyorId': {
    ...{ noun: 'surveyor', of: 'draft', firmWide: true, path: () => '/v1/surveys' },
    body: (surveyorId, own) => ({ vesselId: own.vessel, purpose: 'condition', surveyorId }),
  },
  'updateSurvey /vesselId': {
    ...{ noun: 'vessel', of: 'draft', firmWide: true, path: at },
    body: (vesselId) => ({ vesselId }),
  },
  'updateSurvey /surveyorId': {
    ...{ noun: 'surveyor', of: 'draft', firmWide: true, path: at },
    body: (surveyorId) => ({ surveyorId }),
  },
  'updateSurvey /leadPhotoId': {
    ...{ noun: 'photo', of: 'draft', path: at },
    body: (leadPhotoId) => ({ leadPhotoId }),
  },
  'addParty /findingIds/*': {
    ...{ noun: 'finding', of: 'draft', path: (own) => `${at(own)}/parties` },
    body: (id) => ({ role: 'yard', name: 'N', email: 'new@yard.example', findingIds: [id] }),
  },
  'putYardFindings /findingIds/*': {
    ...{ noun: 'finding', of: 'issued', path: (own) => `${at(own)}/parties/${own.yard}/findings` },
    body: (id) => ({ findingIds: [id] }),
  },
  'putFindingYards /partyIds/*': {
    ...{ noun: 'yard', of: 'issued', path: (own) => `/v1/findings/${own.finding}/yards` },
    body: (id) => ({ partyIds: [id] }),
  },
  'updatePhoto /beforePhotoId': {
    ...{ noun: 'photo', of: 'draft', path: (own) => `/v1/photos/${own.laterPhoto}` },
    body: (beforePhotoId) => ({ beforePhotoId }),
  },
  'createFinding /id': {
    ...{ noun: 'finding', of: 'draft', made: true, path: (own) => `${at(own)}/findings` },
    body: (id) => ({ ...words, id }),
  },
  'createFinding /photoIds/*': {
    ...{ noun: 'photo', of: 'draft', path: (own) => `${at(own)}/findings` },
    body: (id) => ({ ...words, photoIds: [id] }),
  },
  'createFinding /items/*/id': {
    ...{ noun: 'item', of: 'draft', local: true, path: (own) => `${at(own)}/findings` },
    body: (id) => ({ ...words, items: [{ id, text: 'One' }] }),
  },
  'updateFinding /photoIds/*': {
    ...{ noun: 'photo', of: 'draft', path: (own) => `/v1/findings/${own.finding}` },
    body: (id) => ({ photoIds: [id] }),
  },
  'updateFinding /items/*/id': {
    ...{ noun: 'item', of: 'draft', local: true, path: (own) => `/v1/findings/${own.finding}` },
    body: (id) => ({ items: [{ id, text: 'Reworded' }] }),
  },
  'orderFindings /ids/*': {
    ...{ noun: 'finding', of: 'draft', path: (own) => `${at(own)}/findings/order` },
    body: (id, own) => ({ ids: [id, own.openFinding] }),
  },
  'createUpload /id': {
    ...{ noun: 'upload', of: 'draft', made: true, path: (own) => `${at(own)}/uploads` },
    body: (id) => ({ id, name: 'n.jpg', bytes: 9, sha256: 'c'.repeat(64) }),
  },
  'createUpload /findingId': {
    ...{ noun: 'finding', of: 'draft', path: (own) => `${at(own)}/uploads` },
    body: (findingId) => ({ id: newId(), name: 'n.jpg', bytes: 9, sha256: 'd'.repeat(64), findingId }),
  },
  'decideRecommendations /clearanceIds/*': {
    ...{ noun: 'clearance', of: 'issued', oneByOne: true, path: () => '/v1/recommendations/decisions' },
    body: (id) => ({ clearanceIds: [id], decision: 'accept', reason: 'x' }),
  },
  'createWorksheet /id': {
    ...{ noun: 'worksheet', of: 'draft', made: true, path: (own) => `${at(own)}/worksheets` },
    body: (id) => ({ id, kind: 'gas-leak-down', inputs: gasTest }),
  },
  'createWorksheet /findingId': {
    ...{ noun: 'finding', of: 'draft', path: (own) => `${at(own)}/worksheets` },
    body: (findingId) => ({ kind: 'gas-leak-down', inputs: gasTest, findingId }),
  },
  'updateWorksheet /findingId': {
    ...{ noun: 'finding', of: 'draft', path: (own) => `/v1/worksheets/${own.worksheet}` },
    body: (findingId) => ({ findingId }),
  },
  'createInventoryItem /id': {
    ...{ noun: 'inventoryItem', of: 'draft', made: true, path: (own) => `${at(own)}/inventory` },
    body: (id) => ({ id, system: 'hull', name: 'x' }),
  },
  'sendClearance /itemIds/*': {
    ...{ noun: 'openItem', of: 'issued', path: (own) => `/v1/findings/${own.openFinding}/clearances` },
    body: (id) => ({ ...evidence, itemIds: JSON.stringify([id]) }),
  },
  'sendClearance /worksheetId': {
    ...{ noun: 'worksheet', of: 'issued', path: (own) => `/v1/findings/${own.openFinding}/clearances` },
    body: (worksheetId) => ({ ...evidence, worksheetId }),
  },
  'sendClearance /pairs/*/beforePhotoId': {
    ...{ noun: 'photo', of: 'issued', path: (own) => `/v1/findings/${own.openFinding}/clearances` },
    body: (id) => ({ ...evidence, pairs: JSON.stringify([{ file: 0, beforePhotoId: id }]) }),
  },
  'decideClearance /items/*/itemId': {
    ...{ noun: 'item', of: 'issued', path: (own) => `/v1/clearances/${own.clearance}/decision` },
    body: (itemId) => ({ items: [{ itemId, decision: 'accept' }] }),
  },
  'addFindingComment /id': {
    ...{
      noun: 'findingComment',
      of: 'issued',
      made: true,
      path: (own) => `/v1/findings/${own.finding}/comments`,
    },
    body: (id) => ({ id, text: 'x' }),
  },
  'recordReInspection /id': {
    ...{ noun: 'reInspection', of: 'issued', made: true, path: (own) => `${at(own)}/re-inspections` },
    body: (id, own) => ({ id, ...day, items: [{ findingId: own.openFinding, outcome: 'put-right' }] }),
  },
  'recordReInspection /items/*/findingId': {
    ...{ noun: 'openFinding', of: 'issued', path: (own) => `${at(own)}/re-inspections` },
    body: (findingId) => ({ ...day, items: [{ findingId, outcome: 'put-right' }] }),
  },
  'recordReInspection /items/*/itemIds/*': {
    ...{ noun: 'openItem', of: 'issued', path: (own) => `${at(own)}/re-inspections` },
    body: (id, own) => ({
      ...day,
      items: [{ findingId: own.openFinding, itemIds: [id], outcome: 'put-right' }],
    }),
  },
  'recordReInspection /items/*/photoIds/*': {
    ...{ noun: 'photo', of: 'issued', path: (own) => `${at(own)}/re-inspections` },
    body: (id, own) => ({
      ...day,
      items: [{ findingId: own.openFinding, photoIds: [id], outcome: 'put-right' }],
    }),
  },
  'askReview /reviewerId': {
    ...{ noun: 'surveyor', of: 'issued', firmWide: true, path: (own) => `${at(own)}/review` },
    body: (reviewerId) => ({ reviewerId }),
  },
  'addReviewComment /findingId': {
    ...{ noun: 'finding', of: 'draft', path: (own) => `${at(own)}/review/comments` },
    body: (findingId) => ({ text: 'x', findingId }),
  },
  'addReviewComment /replyTo': {
    ...{ noun: 'comment', of: 'draft', path: (own) => `${at(own)}/review/comments` },
    body: (replyTo) => ({ text: 'x', replyTo }),
  },
  'readNotices /ids/*': {
    ...{ noun: 'notice', of: 'issued', ignored: true, path: () => '/v1/notices/read' },
    body: (id) => ({ ids: [id] }),
  },
  'readNotices /upTo': {
    ...{ noun: 'notice', of: 'issued', ignored: true, path: () => '/v1/notices/read' },
    body: (upTo) => ({ upTo }),
  },
  'createQuotation /partyId': {
    ...{ noun: 'client', of: 'draft', path: (own) => `${at(own)}/quotations` },
    body: (partyId) => ({ ...quotation, partyId }),
  },
  'updateQuotation /partyId': {
    ...{ noun: 'client', of: 'draft', path: (own) => `/v1/quotations/${own.quotation}` },
    body: (partyId) => ({ partyId }),
  },
  'createVisit /partyIds/*': {
    ...{ noun: 'client', of: 'draft', path: (own) => `${at(own)}/visits` },
    body: (id) => ({ ...visit, partyIds: [id] }),
  },
  'updateVisit /partyIds/*': {
    ...{ noun: 'client', of: 'draft', path: (own) => `/v1/visits/${own.visit}` },
    body: (id) => ({ partyIds: [id] }),
  },
  'createInvoice /quotationId': {
    ...{ noun: 'quotation', of: 'issued', path: (own) => `${at(own)}/invoices` },
    body: (quotationId) => ({ quotationId }),
  },
  'nameImportPhotos /items/*/photoId': {
    ...{ noun: 'photo', of: 'draft', path: (own) => `/v1/imports/${own.import}/photos` },
    body: (photoId) => ({ items: [{ name: 'a.jpg', photoId }] }),
  },
};
