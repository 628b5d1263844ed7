import { type System, systems } from '@garboard/trade/vocabulary';
import type { Place } from '../../capture/keep.ts';
import { useBrief } from './data.ts';
import { useOnBoard } from './person.ts';

/** The survey and system of an address; null when this telephone doesn't know them, undefined while looking. */
export function usePlace(surveyId: string, name: string): Place | null | undefined {
  const { me } = useOnBoard();
  const survey = useBrief(surveyId);
  const system: System | undefined = systems.find((one) => one === name);
  if (survey === undefined) return undefined;
  return survey && system ? { personId: me.person.id, survey, system } : null;
}
