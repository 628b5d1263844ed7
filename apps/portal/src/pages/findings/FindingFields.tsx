import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { boatOutline } from '@garboard/trade/drawing/boat-outline';
import { isAloft, samePlace } from '@garboard/trade/drawing/boat-places';
import type { Urgency } from '@garboard/trade/vocabulary';
import { harmLabels, systemLabels, urgencies } from '@garboard/trade/vocabulary';
import type { ReactNode } from 'react';
import { fieldError } from '../../api/problems.ts';
import { CheckboxGroup, RadioGroup, SelectField, TextArea, TextField } from '../../ui/Field.tsx';
import { UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { CostFields } from './CostFields.tsx';
import type { FindingDraft } from './findingDraft.ts';
import { findingLabels as labels } from './findingDraft.ts';
import { GradingHelp } from './GradingHelp.tsx';
import { ItemsField } from './ItemsField.tsx';
import { useHullKind } from './useHullKind.ts';
import { WhereOnBoat } from './WhereOnBoat.tsx';

const urgencyOptions = Object.fromEntries(
  urgencies.map((urgency) => [urgency, <UrgencyGauge key={urgency} urgency={urgency} />]),
) as Record<Urgency, ReactNode>;

/** The written part of a finding. */
export function FindingFields({
  draft,
  set,
  survey,
  findings,
  error,
}: {
  draft: FindingDraft;
  set: (change: Partial<FindingDraft>) => void;
  survey: Survey;
  /** All of the survey's. */
  findings: readonly Finding[];
  error: unknown;
}) {
  const kindWith = useHullKind(survey.id, findings, draft.position !== null);
  // Whether heights count to the deck or higher goes by the system; the place itself stays when that changes.
  const stillThere = (system: FindingDraft['system']) =>
    draft.position &&
    samePlace(boatOutline(kindWith(system)), draft.position, isAloft(draft.system), isAloft(system));
  return (
    <>
      <SelectField
        label={labels.system}
        required
        value={draft.system}
        options={systemLabels}
        empty="Choose the system"
        onChange={(system) => set({ system, position: stillThere(system) })}
        error={fieldError(error, '/system')}
      />
      <TextField
        label={labels.title}
        hint="A few words, as you would say it on the telephone."
        required
        maxLength={200}
        lang={navigator.language}
        spellCheck
        value={draft.title}
        onChange={(title) => set({ title })}
        error={fieldError(error, '/title')}
      />
      <TextArea
        label={labels.observed}
        hint="Where, how much, and how it was found."
        value={draft.observed}
        onChange={(observed) => set({ observed })}
        error={fieldError(error, '/observed')}
      />
      <TextArea
        label={labels.consequence}
        value={draft.consequence}
        onChange={(consequence) => set({ consequence })}
        error={fieldError(error, '/consequence')}
      />
      <TextArea
        label={labels.recommendation}
        value={draft.recommendation}
        onChange={(recommendation) => set({ recommendation })}
        error={fieldError(error, '/recommendation')}
      />
      <RadioGroup
        label={labels.urgency}
        required
        name="urgency"
        value={draft.urgency}
        options={urgencyOptions}
        onChange={(urgency) => set({ urgency })}
        error={fieldError(error, '/urgency')}
      />
      {draft.urgency === 'within-days' ? (
        <TextField
          label={labels.withinDays}
          hint="Counted from the day the report is issued."
          short
          type="number"
          required
          min={1}
          max={3650}
          step={1}
          value={draft.withinDays}
          onChange={(withinDays) => set({ withinDays })}
          error={fieldError(error, '/withinDays')}
        />
      ) : null}
      {draft.urgency && draft.urgency !== 'note' ? (
        <TextField
          label={labels.dueOnSet}
          optional
          hint="If left empty, it follows from how soon and from the firm’s own rule, counted from the day of issue."
          short
          type="date"
          value={draft.dueOnSet}
          onChange={(dueOnSet) => set({ dueOnSet })}
          error={fieldError(error, '/dueOnSet')}
        />
      ) : null}
      <ItemsField items={draft.items} onChange={(items) => set({ items })} error={error} />
      <GradingHelp draft={draft} set={set} />
      <CheckboxGroup
        label={labels.harms}
        values={draft.harms}
        options={harmLabels}
        onChange={(harms) => set({ harms })}
      />
      <TextArea
        label={labels.references}
        optional
        rows={2}
        hint="Standards and regulations by their designation, one a line."
        value={draft.references}
        onChange={(references) => set({ references })}
        error={fieldError(error, '/references')}
      />
      <WhereOnBoat draft={draft} set={set} surveyId={survey.id} findings={findings} />
      <CostFields
        cost={draft.cost}
        onChange={(cost) => set({ cost })}
        currency={survey.costs[0]?.currency}
        printed={survey.printCosts}
        error={error}
      />
    </>
  );
}
