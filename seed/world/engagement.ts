import type { EngagementSpec, RatesSpec } from './types.ts';

const terms = `We examine what can be reached and seen on the day. Nothing is taken apart, and what is built in, lined or covered by stores is not seen; we say in the report what that was.

The report is written for you. You own it: you say to whom else it is released. Nobody else may rely on it unless we have agreed to that in writing.

Haul-out, lifting and the opening of fittings are arranged and paid for by you. If a visit is called off less than two working days before, the travel and half of the fee are charged.

What we owe you for a mistake of ours is limited to the sum for which we are insured, which we tell you on request.

The fee is due on the day that the invoice says.`;

/** What the two firms charge. The second hands its reports over only when they are paid for. */
export const rates: RatesSpec[] = [
  {
    firm: 'pellowick',
    perLength: 2_600,
    perHour: 7_800,
    perDistance: 55,
    minimum: 38_000,
    releaseRule: 'at-once',
    paymentWords: 'By bank transfer to Pellowick Marine Survey within the time stated, quoting the number.',
    terms,
  },
  {
    firm: 'dunmarrow',
    perLength: 2_200,
    perHour: 6_500,
    perDistance: 50,
    minimum: 30_000,
    releaseRule: 'when-paid',
    paymentWords: 'By bank transfer, quoting the number. The report is handed over when it has come in.',
    terms,
  },
];

/** How far the business of each survey has come: one waits for its client, one is paid in part, two are settled. */
export const engagements: EngagementSpec[] = [
  { survey: 'larkspindle-insurance', hours: 9, travel: 46, accepted: true, invoiced: true, paid: 'whole' },
  { survey: 'oxbow-pre-purchase', hours: 14, travel: 220, accepted: true, invoiced: true, paid: 'half' },
  {
    ...{ survey: 'larkspindle-re-inspection', hours: 3, travel: 46, accepted: false, invoiced: false },
    visit: {
      day: 9,
      place: 'Stonecleat Boatyard, Sallowhythe',
      note: 'In the slings from nine; every seacock is worked. The key of the companionway is at the yard’s office.',
      asks: ['yard', 'owner'],
      answers: { gethin: 'Slings booked from half past eight.' },
    },
  },
  { survey: 'pepper-condition', hours: 6, travel: 0, accepted: true, invoiced: false },
  { survey: 'tamarack-insurance', hours: 5, travel: 12, accepted: true, invoiced: true, paid: 'whole' },
];
