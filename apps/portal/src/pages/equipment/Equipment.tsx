import type { InventoryItem } from '@garboard/contract/inventory';
import type { Survey } from '@garboard/contract/surveys';
import { surveyIsEditable } from '@garboard/trade/states';
import { systemLabels, systems } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { useWholeList } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Table } from '../../ui/Table.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { madeColumn, numberColumn, placeColumn, untilColumn } from './columns.tsx';

/** The equipment found on board, with its numbers and dates. */
export default function Equipment({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <EquipmentOf survey={survey} />}</WithSurvey>;
}

const bySystem = (a: InventoryItem, b: InventoryItem) =>
  systems.indexOf(a.system) - systems.indexOf(b.system);

function EquipmentOf({ survey }: { survey: Survey }) {
  const writable = surveyIsEditable(survey.state) && mayDo('inventory.write', survey);
  const list = useWholeList('listInventory', { params: { id: survey.id } });
  const items = list.data?.toSorted(bySystem);
  return (
    <SurveyFrame
      survey={survey}
      title="Equipment"
      action={
        writable ? (
          <ButtonLink kind="main" href={`/surveys/${survey.id}/equipment/new`}>
            Record equipment
          </ButtonLink>
        ) : null
      }
    >
      {list.error && !items ? (
        <ErrorNotice quiet error={list.error} onRetry={() => void list.refetch()} />
      ) : null}
      {list.isPending ? <Loading what="the equipment" /> : null}
      {items && !items.length ? (
        <EmptyState title="No equipment recorded">
          <p>
            Extinguishers, flares, raft, gas hoses, the age of the rig: what bears a serial number or a date
            by which it is judged. The report prints it, and the list “What expires” watches the dates.
          </p>
        </EmptyState>
      ) : null}
      {items?.length ? (
        <Table
          caption="By system"
          rows={items}
          rowKey={(item) => item.id}
          columns={[
            {
              key: 'name',
              heading: 'What',
              cell: (item) => (
                <>
                  {item.may.edit ? (
                    <Link href={`/surveys/${survey.id}/equipment/${item.id}`}>{item.name}</Link>
                  ) : (
                    item.name
                  )}
                  <small>
                    {systemLabels[item.system]}
                    {item.count > 1 ? `, ${item.count} of them` : ''}
                  </small>
                </>
              ),
            },
            placeColumn,
            numberColumn,
            madeColumn,
            untilColumn,
          ]}
        />
      ) : null}
    </SurveyFrame>
  );
}
