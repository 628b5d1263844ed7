import { etagOf } from '@garboard/contract/client';
import type { InventoryItem } from '@garboard/contract/inventory';
import type { Survey } from '@garboard/contract/surveys';
import { systemLabels } from '@garboard/trade/vocabulary';
import { useLocation } from 'wouter';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { NotFound } from '../../app/NotFound.tsx';
import { useRecordEdit } from '../../app/recordEdit.ts';
import { Button } from '../../ui/Button.tsx';
import { Restored } from '../../ui/EditNotices.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Merge } from '../../ui/Merge.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { DeleteEquipment } from './DeleteEquipment.tsx';
import { EquipmentFields } from './EquipmentFields.tsx';
import { bodyOf, draftOf, type EquipmentDraft, equipmentLabels } from './equipmentDraft.ts';

/** A new piece of equipment, or one already recorded. */
export default function EquipmentEditor({ surveyId, itemId }: { surveyId: string; itemId?: string }) {
  const item = useAnswer(
    'getInventoryItem',
    { params: { id: itemId ?? '' } },
    { enabled: Boolean(itemId), anew: true },
  );
  if (itemId) {
    if (isStatus(item.error, 404)) return <NotFound />;
    if (item.error && !item.data) return <ErrorNotice error={item.error} />;
    if (!item.data || !item.isFetchedAfterMount) return <Loading what="the equipment" />;
  }
  return (
    <WithSurvey id={surveyId}>{(survey) => <Editor survey={survey} item={item.data ?? null} />}</WithSurvey>
  );
}

function Editor({ survey, item }: { survey: Survey; item: InventoryItem | null }) {
  const [, go] = useLocation();
  const home = `/surveys/${survey.id}/equipment`;
  const edit = useRecordEdit<InventoryItem, EquipmentDraft>({
    record: item,
    valuesOf: draftOf,
    save: (values, base, idempotencyKey) =>
      base
        ? call('updateInventoryItem', {
            params: { id: base.id },
            body: bodyOf(values),
            ifMatch: etagOf(base),
          })
        : call('createInventoryItem', { params: { id: survey.id }, body: bodyOf(values), idempotencyKey }),
    reload: () => call('getInventoryItem', { params: { id: item?.id ?? '' } }),
    keepAs: `unsaved:equipment:${item?.id ?? `new:${survey.id}`}`,
    touches: ['listInventory', 'getInventoryItem', 'listExpiries', 'listEvents'],
    done: (saved) => `Saved: ${saved.name}.`,
    onDone: () => leaving.pass(() => go(home)),
  });
  const leaving = useLeaveWarning(edit.unsaved, edit.discard);
  const title = item ? item.name : 'Record equipment';
  if (edit.theirs) {
    return (
      <SurveyFrame survey={survey} title={title}>
        <Merge
          base={draftOf(edit.base)}
          mine={edit.values}
          theirs={draftOf(edit.theirs)}
          labels={equipmentLabels}
          show={(key, values) =>
            key === 'system' ? (values.system ? systemLabels[values.system] : '') : values[key]
          }
          busy={edit.busy}
          onSettle={edit.settle}
          onPostpone={edit.postpone}
        />
      </SurveyFrame>
    );
  }
  return (
    <SurveyFrame survey={survey} title={title}>
      <form
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          edit.save();
        }}
      >
        <Restored when={edit.restored} onDiscard={edit.discard} />
        <ErrorNotice error={edit.error} />
        <EquipmentFields draft={edit.values} set={edit.set} error={edit.error} />
        <div className="actions">
          <Button kind="main" type="submit" busy={edit.busy} busyLabel="Saving…">
            Save
          </Button>
          <Button
            onClick={() => {
              edit.discard();
              leaving.pass(() => go(home));
            }}
          >
            Cancel
          </Button>
          {item ? <DeleteEquipment item={item} onDeleted={() => leaving.pass(() => go(home))} /> : null}
        </div>
      </form>
      {leaving.dialog}
    </SurveyFrame>
  );
}
