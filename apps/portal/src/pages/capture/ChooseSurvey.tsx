import { purposeLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { Who } from '../../app/Layout.tsx';
import type { SurveyBrief } from '../../capture/kept.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Big } from './Big.tsx';
import { useHeard, useSignal } from './data.ts';
import { Frame } from './Frame.tsx';
import { useOnBoard } from './person.ts';
import { clockWords } from './words.ts';

/** Which boat. */
export function ChooseSurvey() {
  const { me, ended } = useOnBoard();
  const surveys = useHeard<SurveyBrief[]>('surveys');
  const signal = useSignal();
  return (
    <Frame
      title="Which survey?"
      over="On board"
      under={surveys ? `As the server had them ${timeOf(surveys.at)}` : null}
      back={{ href: '/surveys', label: 'the portal' }}
    >
      {surveys?.data.length ? (
        <ul className="capture-list">
          {surveys.data.map((survey) => (
            <li key={survey.id}>
              <Big
                href={`/capture/${survey.id}`}
                title={survey.name}
                more={purposeLabels[survey.purpose as keyof typeof purposeLabels]}
              />
            </li>
          ))}
        </ul>
      ) : null}
      {surveys && !surveys.data.length ? (
        <EmptyState title="No survey is open">
          <p>
            <Link href="/surveys/new">Begin one</Link> while there is signal.
          </p>
        </EmptyState>
      ) : null}
      {surveys === null ? (
        <p className="soft" role="status">
          {signal && !ended
            ? 'Fetching your surveys…'
            : 'This telephone has not fetched your surveys yet. It does as soon as there is signal.'}
        </p>
      ) : null}
      <div className="capture-who">
        <Who me={me} />
      </div>
    </Frame>
  );
}

const timeOf = (at: number) => {
  const words = clockWords(at);
  return words.includes(',') ? `on ${words}` : `at ${words}`;
};
