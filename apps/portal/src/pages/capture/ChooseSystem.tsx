import type { CoverageItem } from '@garboard/contract/coverage';
import { systemLabels, systems } from '@garboard/trade/vocabulary';
import { useEffect } from 'react';
import { coverageId } from '../../capture/kept.ts';
import { hearSurvey } from '../../capture/reads.ts';
import { count } from '../../ui/format.ts';
import { Big } from './Big.tsx';
import { useBrief, useHeard, useKept } from './data.ts';
import { Frame } from './Frame.tsx';
import { Missing } from './Missing.tsx';
import { useOnBoard } from './person.ts';
import { clockWords, reachWords } from './words.ts';

/** Which system of the boat; each says how far it has been examined and what was kept of it. */
export function ChooseSystem({ surveyId }: { surveyId: string }) {
  const { me } = useOnBoard();
  const survey = useBrief(surveyId);
  const coverage = useHeard<CoverageItem[]>('coverage', surveyId);
  const kept = useKept().filter((item) => item.surveyId === surveyId);
  const personId = me.person.id;
  useEffect(() => {
    // What others have added since; without signal what was heard before has to do.
    if (survey) void hearSurvey(personId, survey).catch(() => undefined);
  }, [personId, survey]);
  if (!survey) return <Missing loading={survey === undefined} />;
  const answer = (system: string) => {
    const mine = kept.find((item) => item.id === coverageId(surveyId, system as CoverageItem['system']));
    if (mine?.kind === 'coverage' && mine.state !== 'sent') return reachWords(mine.answer.reached);
    const theirs = coverage?.data.find((item) => item.system === system);
    return theirs ? reachWords(theirs.reached) : null;
  };
  return (
    <Frame
      title="Which system?"
      over={<strong>{survey.name}</strong>}
      under={coverage ? `Coverage as the server had it, ${clockWords(coverage.at)}` : null}
      back={{ href: '/capture', label: 'the surveys' }}
    >
      <ul className="capture-list">
        {systems.map((system) => {
          const here = kept.filter((item) => item.system === system && item.kind !== 'coverage').length;
          return (
            <li key={system}>
              <Big
                href={`/capture/${surveyId}/${system}`}
                title={systemLabels[system]}
                more={[answer(system), here ? `${count(here, 'thing')} kept` : null]
                  .filter(Boolean)
                  .join(', ')}
              />
            </li>
          );
        })}
      </ul>
    </Frame>
  );
}
