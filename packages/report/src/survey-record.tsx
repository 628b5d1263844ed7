import type { ReportSnapshot, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import {
  attendanceConditionLabels,
  hullMaterialLabels,
  labelOf,
  propulsionLabels,
} from '@garboard/trade/vocabulary';
import { CoverageRecord, hasCoverage } from './coverage-record.tsx';
import { EquipmentRecord, hasEquipment } from './equipment-record.tsx';
import { length, mass, writtenDay } from './format.ts';
import { Aside, Facts, Prose } from './parts.tsx';

/** The vessel, the attendances, the scope asked for and achieved, the equipment: what the findings rest on. */
export function SurveyRecord({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const { survey, attendances } = snapshot;
  return (
    <section id="record">
      <h2>The vessel and the survey</h2>
      <Aside id="vessel" title="Vessel">
        <Particulars snapshot={snapshot} />
      </Aside>
      <Aside id="attendances" title="Attendances">
        {attendances.length === 0 ? <p>None recorded.</p> : <Attendances snapshot={snapshot} />}
      </Aside>
      <Aside id="scope" title="Scope">
        <Prose text={survey.scope || 'No scope was agreed in writing.'} />
      </Aside>
      <Aside id="limitations" title="Limitations">
        <Prose text={survey.limitations || 'No particular limitations were recorded.'} />
        <p>
          Parts that were covered, locked, fouled, under water or out of reach were not seen, and nothing is
          said about them. Nothing was dismantled unless this report says so.
        </p>
      </Aside>
      {hasCoverage(snapshot) && <CoverageRecord snapshot={snapshot} />}
      {hasEquipment(snapshot) && <EquipmentRecord snapshot={snapshot} />}
    </section>
  );
}

function Particulars({ snapshot: { vessel } }: { snapshot: ReportSnapshot }) {
  return (
    <>
      <Facts
        caption="Particulars of the vessel"
        rows={[
          ['Name', vessel.name],
          ['Hull number', vessel.hullNumber],
          ['Official number', vessel.officialNumber],
          ['Builder', vessel.builder],
          ['Model', vessel.model],
          ['Year built', vessel.yearBuilt],
          ['Hull', vessel.hullMaterial && labelOf(hullMaterialLabels, vessel.hullMaterial)],
          ['Propulsion', vessel.propulsion && labelOf(propulsionLabels, vessel.propulsion)],
          ['Length overall', vessel.lengthOverallM && length(vessel.lengthOverallM)],
          ['Beam', vessel.beamM && length(vessel.beamM)],
          ['Draught', vessel.draftM && length(vessel.draftM)],
          ['Displacement', vessel.displacementKg && mass(vessel.displacementKg)],
          ['Home port', vessel.homePort],
          ['Flag', vessel.flag],
        ]}
      />
      <p className="small">
        Dimensions and displacement are as stated by the owner or the builder unless the scope says they were
        measured.
      </p>
    </>
  );
}

function Attendances({ snapshot }: { snapshot: ReportSnapshot }) {
  return (
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
        {snapshot.attendances.map((attendance) => (
          <tr key={`${attendance.date} ${attendance.place} ${attendance.condition}`}>
            <th scope="row">{writtenDay(attendance.date)}</th>
            <td dir="auto">{attendance.place}</td>
            <td>{attendanceConditionLabels[attendance.condition]}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
