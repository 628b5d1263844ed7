import type { SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { hullMaterialLabels, labelOf, propulsionLabels, verdictLabels } from '@garboard/trade/vocabulary';
import { Attendances } from './attendances.tsx';
import { CoverageRecord, hasCoverage } from './coverage-record.tsx';
import { EquipmentRecord, hasEquipment } from './equipment-record.tsx';
import { length, mass } from './format.ts';
import { Aside, Facts, Prose } from './parts.tsx';

/** The vessel, the attendances, the scope asked for and achieved, the equipment: what the findings rest on. */
export function SurveyRecord({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const { survey } = snapshot;
  return (
    <section id="record">
      <h2>The vessel and the survey</h2>
      <Aside id="vessel" title="Vessel">
        <Particulars snapshot={snapshot} />
      </Aside>
      <Aside id="attendances" title="Attendances">
        <Attendances snapshot={snapshot} />
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

function Particulars({ snapshot }: { snapshot: SurveyReportSnapshot }) {
  const { vessel, measures, hullNumberDecoded } = snapshot;
  return (
    <>
      <Facts
        caption="Particulars of the vessel"
        rows={[
          ['Name', vessel.name],
          [
            'Hull number',
            vessel.hullNumber && <HullNumber marked={vessel.hullNumber} decoded={hullNumberDecoded} />,
          ],
          ['Official number', vessel.officialNumber],
          ['Builder', vessel.builder],
          ['Model', vessel.model],
          ['Year built', vessel.yearBuilt],
          ['Hull', vessel.hullMaterial && labelOf(hullMaterialLabels, vessel.hullMaterial)],
          ['Propulsion', vessel.propulsion && labelOf(propulsionLabels, vessel.propulsion)],
          ['Length overall', vessel.lengthOverallM && length(vessel.lengthOverallM, measures)],
          ['Beam', vessel.beamM && length(vessel.beamM, measures)],
          ['Draught', vessel.draftM && length(vessel.draftM, measures)],
          ['Displacement', vessel.displacementKg && mass(vessel.displacementKg, measures)],
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

interface HullNumberProps {
  marked: string;
  decoded: SurveyReportSnapshot['hullNumberDecoded'];
}

/** The hull number as marked, what it tells, and what is wrong with it. */
function HullNumber({ marked, decoded }: HullNumberProps) {
  if (!decoded) return <bdi>{marked}</bdi>;
  return (
    <>
      <bdi>{marked}</bdi>: <b>{verdictLabels[decoded.verdict].toLowerCase()}</b>
      <p className="decoded">{decoded.fields.map(({ label, text }) => `${label} ${text}`).join('; ')}.</p>
      {decoded.reasons.map((reason) => (
        <p key={reason} className="decoded" dir="auto">
          {reason}
        </p>
      ))}
    </>
  );
}
