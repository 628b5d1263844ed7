import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { attendanceConditionLabels, purposeLabels, verdictLabels } from '@garboard/trade/vocabulary';
import { Facts } from '../../../ui/Facts.tsx';
import { formatDay } from '../../../ui/format.ts';
import { Table } from '../../../ui/Table.tsx';
import { vesselFacts } from '../../vessels/vesselWords.ts';

/** Vessel, attendances, scope and limitations, as they were issued. */
export function RecordRead({
  snapshot,
  attendancesOnly = false,
}: {
  snapshot: ReportSnapshot;
  attendancesOnly?: boolean;
}) {
  const { survey, vessel, surveyor, firm, present } = snapshot;
  const decoded = 'hullNumberDecoded' in snapshot ? snapshot.hullNumberDecoded : null;
  const signer = [surveyor.name, surveyor.qualifications].filter(Boolean).join(', ');
  return (
    <section id="record" className="stack">
      <h2>{attendancesOnly ? 'Attendances' : 'The vessel and the survey'}</h2>
      {attendancesOnly ? null : (
        <>
          <h3>Vessel</h3>
          <Facts facts={[['Name', vessel.name], ...vesselFacts(vessel)]} />
          {decoded ? (
            <>
              <h3>The hull number taken apart</h3>
              <p>
                {verdictLabels[decoded.verdict]}. {decoded.reasons.join(' ')}
              </p>
              <Facts facts={decoded.fields.map(({ label, text }) => [label, text] as const)} />
            </>
          ) : null}
          <h3>Survey</h3>
          <Facts
            facts={[
              ['Purpose', purposeLabels[survey.purpose]],
              ['Prepared for', survey.requestedBy || 'Not stated'],
              ['Surveyor', signer],
              ['Firm', [firm.name, ...firm.addressLines].join(', ')],
            ]}
          />
          <h3>Attendances</h3>
        </>
      )}
      {snapshot.attendances.length ? (
        <Table
          caption={present.length ? `Also there: ${present.join('; ')}` : 'When and where she was seen'}
          rows={snapshot.attendances.map((attendance, at) => ({ ...attendance, at }))}
          rowKey={(row) => String(row.at)}
          columns={[
            { key: 'date', heading: 'Date', cell: (row) => formatDay(row.date) },
            { key: 'place', heading: 'Place', cell: (row) => row.place },
            {
              key: 'condition',
              heading: 'The vessel was',
              cell: (row) => attendanceConditionLabels[row.condition],
            },
          ]}
        />
      ) : (
        <p>None recorded.</p>
      )}
      {attendancesOnly ? null : (
        <>
          <h3>Scope</h3>
          <p className="text">{survey.scope || 'No scope was agreed in writing.'}</p>
          <h3>Limitations</h3>
          <p className="text">
            {survey.limitations || 'No particular limitations were recorded.'} Parts that were covered,
            locked, fouled, under water or out of reach were not seen, and nothing is said about them.
          </p>
        </>
      )}
    </section>
  );
}
