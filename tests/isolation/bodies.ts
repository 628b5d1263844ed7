import { newId } from '@garboard/db/ids';

/** A pressure test whose inputs are accepted. */
export const gasTest = {
  startPressure: 250,
  endPressure: 250,
  holdTime: 5,
  gaugeResolution: 1,
  noLiquid: true,
};

/** An entry of the catalogue that a firm may write. */
export const ownEntry = { system: 'hull', title: 'Secret', urgency: 'note', harms: ['deterioration'] };

/** A firm's rates and a line of a quotation, as the routes of the engagement take them. */
export const rates = {
  ...{ currency: 'EUR', perLength: 2_450, lengthUnit: 'm', perHour: 9_500, perDistance: 42 },
  ...{ distanceUnit: 'km', minimum: 45_000, taxName: 'VAT', taxRate: 20_000 },
  ...{ quotationDays: 30, paymentDays: 14, releaseRule: 'at-once', paymentWords: 'By bank transfer.' },
};
export const quotation = {
  lines: [{ text: 'Survey, afloat', quantity: 11_280, unit: 'm', price: 2_450, taxRate: 20_000 }],
  ...{ scope: 'Hull.', validUntil: '2099-01-01' },
};
export const visit = {
  ...{ startsAt: '2099-01-01T09:00:00Z', endsAt: '2099-01-01T12:00:00Z' },
  ...{ place: 'Hard 3', condition: 'ashore' },
};
export const bill = { billTo: 'Ines Tolland', lines: quotation.lines };

/** What each route that takes a body is sent, well-formed: what is refused is refused for who asks. By route name. */
export const bodies: Record<string, object | ((ids: Record<string, string>) => object)> = {
  createSurvey: (ids) => ({ vesselId: ids.vessels, purpose: 'condition' }),
  createVessel: { name: 'Sedge' },
  sendClearance: { statement: 's', workDoneBy: 'w', workDoneOn: '2026-01-01' },
  updateFirm: { phone: '1' },
  addMember: { role: 'office', name: 'N', email: 'n@n.example' },
  updateVessel: { beamM: 3 },
  updateSurvey: { scope: 'x' },
  addParty: { role: 'owner', name: 'N', email: 'n@n.example' },
  updateParty: { released: true },
  updatePhoto: { caption: 'x' },
  createUpload: { id: newId(), name: 'c.jpg', bytes: 5000, sha256: 'c'.repeat(64) },
  createFinding: { system: 'hull', title: 't', urgency: 'note' },
  updateFinding: { title: 'x' },
  nameImportPhotos: { items: [] },
  startImport: { leaveOutBadRows: true },
  orderFindings: { ids: ['0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f'] },
  putFindingYards: { partyIds: [] },
  putYardFindings: { findingIds: [] },
  createReport: { kind: 'full' },
  putCatalogueEntry: ownEntry,
  extendFinding: { dueOn: '2099-01-01', reason: 'x' },
  addFindingComment: { text: 'x' },
  recordReInspection: (ids) => ({
    ...{ date: '2026-06-01', place: 'Hard 3', condition: 'ashore' },
    items: [{ findingId: ids.findings, outcome: 'put-right' }],
  }),
  eraseMe: { email: 'somebody@else.example' },
  createWebhookEndpoint: (ids) => ({
    ...{ firmId: ids.firms ?? newId(), role: 'insurer', label: 'x', url: 'https://x.example/' },
    kinds: ['report.issued'],
  }),
  updateWebhookEndpoint: { label: 'x' },
  replayWebhookDeliveries: { since: '2026-01-01T00:00:00Z', until: '2026-01-02T00:00:00Z' },
  createShareLink: { label: 'x', days: 3 },
  putFirmRates: rates,
  saveFirmTerms: { text: 'x' },
  createQuotation: (ids) => ({ ...quotation, partyId: ids.payer ?? newId() }),
  updateQuotation: { scope: 'x' },
  acceptQuotation: { typedName: 'x', textSha256: 'a'.repeat(64) },
  declineQuotation: { reason: 'x' },
  withdrawQuotation: { reason: 'x' },
  createVisit: visit,
  updateVisit: { note: 'x' },
  cancelVisit: { reason: 'x' },
  answerVisit: { answer: 'confirmed' },
  createInvoice: bill,
  updateInvoice: { billTo: 'x' },
  voidInvoice: { reason: 'x' },
  recordPayment: { amount: 1, paidOn: '2026-06-01' },
  giveRelease: { reason: 'x' },
  decideClearance: { decision: 'accept' },
  decideRecommendations: (ids) => ({
    ...{ clearanceIds: [ids.clearances ?? newId()], decision: 'accept', reason: 'x' },
  }),
  createSavedView: { page: 'jobs', name: 'x', query: {} },
  updateSavedView: { name: 'x' },
  createWorksheet: { kind: 'gas-leak-down', inputs: gasTest },
  updateWorksheet: { title: 'x' },
  replaceCoverage: { items: [] },
  answerCoverage: { reached: 'examined' },
  createInventoryItem: { system: 'hull', name: 'x' },
  updateInventoryItem: { name: 'x' },
  withdrawFinding: { reason: 'x' },
  askReview: {},
  decideReview: { decision: 'send-back', reason: 'x' },
  addReviewComment: { text: 'x' },
  updateReviewComment: { settled: true },
  putSigningKey: { p12: 'AAAA', passphrase: 'x' },
};
