import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { attendanceConditionLabels } from '@garboard/trade/vocabulary';
import { listed, writtenDay } from './format.ts';

/** When and where the vessel was attended, in what condition she was, and who else was there. */
export function Attendances({ snapshot: { attendances, present } }: { snapshot: ReportSnapshot }) {
  return (
    <>
      {attendances.length === 0 ? (
        <p>None recorded.</p>
      ) : (
        <table className="plain">
          <caption className="unseen">When and where the vessel was attended</caption>
          <thead>
            <tr>
              <th scope="col">Date</th>
              <th scope="col">Place</th>
              <th scope="col">Vessel was</th>
            </tr>
          </thead>
          <tbody>
            {attendances.map((attendance) => (
              <tr key={`${attendance.date} ${attendance.place} ${attendance.condition}`}>
                <th scope="row">{writtenDay(attendance.date)}</th>
                <td dir="auto">{attendance.place}</td>
                <td>{attendanceConditionLabels[attendance.condition]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {present.length > 0 && (
        <p className="present" dir="auto">
          <b>Also present: </b>
          {present.some((person) => person.includes(',')) ? present.join('; ') : listed(present)}.
        </p>
      )}
    </>
  );
}
