import type { Survey } from '@garboard/contract/surveys';
import { worksheetGroupLabels, worksheetGroups } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { Link, useSearch } from 'wouter';
import { useAnswer } from '../../api/queries.ts';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';

/** The worksheets there are, by what they are about. */
export default function ChooseKind({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <Kinds survey={survey} />}</WithSurvey>;
}

function Kinds({ survey }: { survey: Survey }) {
  const kinds = useAnswer('listWorksheetKinds', {});
  const [sought, setSought] = useState('');
  // The finding it is for, when one came from there.
  const search = useSearch();
  const words = sought.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = (kinds.data?.items ?? []).filter((kind) => {
    const text = `${kind.title} ${kind.purpose} ${worksheetGroupLabels[kind.group]}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
  return (
    <SurveyFrame survey={survey} title="Choose a worksheet">
      <div className="stack-wide">
        <search className="filters">
          <TextField
            className="grow"
            label="Find by a word"
            type="search"
            value={sought}
            onChange={setSought}
          />
        </search>
        {kinds.error ? <ErrorNotice error={kinds.error} onRetry={() => void kinds.refetch()} /> : null}
        {kinds.isPending ? <Loading what="the worksheets" /> : null}
        {worksheetGroups.map((group) => {
          const inGroup = shown.filter((kind) => kind.group === group);
          if (!inGroup.length) return null;
          return (
            <section key={group} className="section">
              <h2>{worksheetGroupLabels[group]}</h2>
              <dl className="kinds">
                {inGroup.map((kind) => (
                  <div key={kind.kind}>
                    <dt>
                      <Link
                        href={`/surveys/${survey.id}/worksheets/new/${kind.kind}${search ? `?${search}` : ''}`}
                      >
                        {kind.title}
                      </Link>
                    </dt>
                    <dd>{kind.purpose}</dd>
                  </div>
                ))}
              </dl>
            </section>
          );
        })}
        {kinds.data && !shown.length ? <p>No worksheet has these words. Try fewer.</p> : null}
      </div>
    </SurveyFrame>
  );
}
