import type { WorksheetKindSummary } from '@garboard/contract/worksheets';
import { systemLabels } from '@garboard/trade/vocabulary';
import { Big } from './Big.tsx';
import { useHeard } from './data.ts';
import { Frame } from './Frame.tsx';
import { Missing } from './Missing.tsx';
import { usePlace } from './usePlace.ts';
import { clockWords } from './words.ts';

/** Which worksheet; those of this system first. */
export function ChooseWorksheet({ surveyId, system }: { surveyId: string; system: string }) {
  const place = usePlace(surveyId, system);
  const kinds = useHeard<WorksheetKindSummary[]>('kinds');
  if (!place || kinds === undefined) return <Missing loading={place !== null} />;
  const home = `/capture/${surveyId}/${system}`;
  const here = kinds?.data.filter((kind) => kind.system === system) ?? [];
  const others = kinds?.data.filter((kind) => kind.system !== system) ?? [];
  const list = (some: WorksheetKindSummary[]) => (
    <ul className="capture-list">
      {some.map(({ kind, title, purpose }) => (
        <li key={kind}>
          <Big href={`${home}/worksheets/${kind}`} title={title} more={purpose} />
        </li>
      ))}
    </ul>
  );
  return (
    <Frame
      title="Which worksheet?"
      over={
        <>
          <strong>{place.survey.name}</strong> · {systemLabels[place.system]}
        </>
      }
      under={kinds ? `As the server had them, ${clockWords(kinds.at)}` : null}
      back={{ href: home, label: systemLabels[place.system] }}
    >
      {kinds ? null : <p>This telephone has not fetched the worksheets yet. It does when there is signal.</p>}
      {here.length ? list(here) : null}
      {others.length ? (
        <details open={!here.length}>
          <summary>Worksheets of other systems, {others.length}</summary>
          {list(others)}
        </details>
      ) : null}
    </Frame>
  );
}
