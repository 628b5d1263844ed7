import type { CatalogueEntry } from '@garboard/contract/catalogue';
import type { Survey } from '@garboard/contract/surveys';
import type { Ref } from 'react';
import { useAnswer } from '../../api/queries.ts';
import { ChooseEntry } from '../catalogue/ChooseEntry.tsx';

/** The choice of a known defect to begin from. What is written already stays. */
export function BeginFrom({
  survey,
  open,
  onChoose,
  ref,
}: {
  survey: Survey;
  /** For a finding of which nothing is written yet. */
  open: boolean;
  onChoose: (entry: CatalogueEntry) => void;
  ref: Ref<HTMLDetailsElement>;
}) {
  return (
    <details ref={ref} className="boxed" open={open || undefined}>
      <summary>Begin from a known defect</summary>
      <ChooseEntry firmId={survey.firmId} onChoose={onChoose} />
    </details>
  );
}

/** Fetches the entry that the address names, to begin from it at once. */
export function useEntry(survey: Survey, key: string) {
  return useAnswer(
    'getCatalogueEntry',
    { params: { key }, query: { firmId: survey.firmId } },
    { enabled: key !== '' },
  ).data;
}
