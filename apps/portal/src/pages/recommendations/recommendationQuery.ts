import { findingStates, systems, urgencies } from '@garboard/trade/vocabulary';
import type { CallArgs } from '../../api/client.ts';
import { oneOf } from '../../app/filters.ts';

type Query = NonNullable<CallArgs<'listRecommendations'>['query']>;

export const dueLabels = {
  overdue: 'Overdue',
  'this-week': 'In the next 7 days',
  later: 'Later',
  none: 'Without a date',
} as const;
export const waitLabels = {
  me: 'My decision',
  owner: 'The owner',
  insurer: 'The insurer',
  surveyor: 'The surveyor',
} as const;
export const sortLabels = {
  due: 'Soonest due',
  sent: 'Waiting longest',
  urgency: 'Most urgent',
  vessel: 'Vessel',
} as const;

const keys = <K extends string>(labels: Record<K, string>) => Object.keys(labels) as K[];
const states = findingStates.filter((state) => state !== 'draft');
const idForm = /^[0-9a-f-]{36}$/;

/** What the address of the list asks for. Without a word on it, what is still to be cleared. */
export function recommendationQuery(filter: (name: string) => string): Query & { sort: string } {
  const state = filter('state');
  const idOf = (name: string) => (idForm.test(filter(name)) ? filter(name) : undefined);
  return {
    state: oneOf(state, states),
    decided: state === '' ? 'no' : state === 'decided' ? 'yes' : undefined,
    due: oneOf(filter('due'), keys(dueLabels)),
    waitingFor: oneOf(filter('waiting'), keys(waitLabels)),
    urgency: oneOf(filter('urgency'), urgencies),
    system: oneOf(filter('system'), systems),
    firmId: idOf('firm'),
    vesselId: idOf('vessel'),
    q: filter('q') || undefined,
    sort: oneOf(filter('sort'), keys(sortLabels)) ?? 'due',
  };
}
