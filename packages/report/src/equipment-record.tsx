import type { SnapshotEquipment, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { dayIn } from '@garboard/trade/due-dates';
import { hasExpired, yearsBetween } from '@garboard/trade/inventory';
import { type System, systemLabels, systems } from '@garboard/trade/vocabulary';
import { counted, writtenDay } from './format.ts';
import { Prose } from './parts.tsx';

/** The heading's place in the document, and whether there is anything to put under it. */
export const equipmentLine = { id: 'equipment', title: 'Equipment on board' };
export const hasEquipment = (snapshot: SurveyReportSnapshot): boolean => snapshot.inventory.length > 0;

/** Equipment with its numbers and dates, and which of it was past its last day when the report was made. */
export function EquipmentRecord({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const { inventory } = snapshot;
  const today = dayIn(snapshot.timeZone, new Date(snapshot.frozenAt));
  const expired = inventory.filter((item) => hasExpired(item.expiresOn, today));
  return (
    <section id={equipmentLine.id} className="record-part">
      <h3>{equipmentLine.title}</h3>
      <Summary all={inventory} expired={expired} today={today} />
      <table className="equipment">
        <caption className="unseen">Equipment, its numbers and dates</caption>
        <thead>
          <tr>
            <th scope="col">What and where</th>
            <th scope="col" className="count">
              How many
            </th>
            <th scope="col" className="serial">
              Maker, serial number
            </th>
            <th scope="col" className="date">
              Made or fitted
            </th>
            <th scope="col" className="date">
              Good until
            </th>
          </tr>
        </thead>
        {systems.map((system) => (
          <OfSystem
            key={system}
            system={system}
            items={inventory.filter((item) => item.system === system)}
            today={today}
          />
        ))}
      </table>
      <p className="small">
        Numbers and dates are as marked on the equipment or as told. Being in date is no proof that it works.
      </p>
    </section>
  );
}

interface SummaryProps {
  all: readonly SnapshotEquipment[];
  expired: readonly SnapshotEquipment[];
  today: string;
}

function Summary({ all, expired, today }: SummaryProps) {
  const dated = all.filter((item) => item.expiresOn !== null).length;
  const entries = counted(all.length, 'entry', 'entries');
  if (expired.length === 0) {
    const none = dated > 0 ? ` None had passed its last day on ${writtenDay(today)}.` : '';
    return (
      <p>
        {entries}, {dated} with a last day marked.{none}
      </p>
    );
  }
  return (
    <p className="unreached keep">
      {entries}, {dated} with a last day marked.{' '}
      <b>
        Expired by {writtenDay(today)}: {expired.map((item) => item.name).join('; ')}.
      </b>{' '}
      Replace or service {expired.length === 1 ? 'it' : 'them'} before relying on{' '}
      {expired.length === 1 ? 'it' : 'them'}.
    </p>
  );
}

interface OfSystemProps {
  system: System;
  items: readonly SnapshotEquipment[];
  today: string;
}

function OfSystem({ system, items, today }: OfSystemProps) {
  if (items.length === 0) return null;
  return (
    <tbody>
      <tr className="of-system">
        <th scope="rowgroup" colSpan={5}>
          {systemLabels[system]}
        </th>
      </tr>
      {items.map((item) => (
        <Row key={item.id} item={item} today={today} />
      ))}
    </tbody>
  );
}

function Row({ item, today }: { item: SnapshotEquipment; today: string }) {
  return (
    <tr>
      <th scope="row">
        <span dir="auto">{item.name}</span>
        {item.place && (
          <span className="place" dir="auto">
            {item.place}
          </span>
        )}
        <Prose text={item.note} />
      </th>
      <td className="count">{item.count}</td>
      <td className="serial">
        {item.maker && <span dir="auto">{item.maker}</span>}{' '}
        {item.serialNumber && <bdi>{item.serialNumber}</bdi>}
      </td>
      <td className="date">{item.madeOn && <Made on={item.madeOn} today={today} />}</td>
      <td className="date">
        {item.expiresOn &&
          (hasExpired(item.expiresOn, today) ? (
            <b className="expired">Expired on {writtenDay(item.expiresOn)}</b>
          ) : (
            writtenDay(item.expiresOn)
          ))}
      </td>
    </tr>
  );
}

function Made({ on, today }: { on: string; today: string }) {
  const years = yearsBetween(on, today);
  return (
    <>
      {writtenDay(on)}
      {years > 0 && <span className="place">{counted(years, 'year', 'years')} old</span>}
    </>
  );
}
