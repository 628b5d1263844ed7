const terms: readonly (readonly [string, string])[] = [
  ['Afloat', 'The vessel lay in the water, at a berth, mooring or anchor. Her bottom was not seen.'],
  ['Ashore', 'The vessel stood or hung out of the water and her bottom could be seen.'],
  ['Under way', 'The vessel was under her own power or sail during the attendance.'],
  [
    'Clearing',
    'Evidence of the work is sent and whoever the survey names decides that nothing more is asked.',
  ],
  [
    'Accepted as it is',
    'The one who decides accepts the condition without the recommended work, within stated limits.',
  ],
  ['Finding', 'Something seen that the owner, buyer or insurer should know.'],
  ['Recommendation', 'What the surveyor advises to do about a finding, and by when.'],
  ['Haul-out or lay-up', 'The next time the vessel is taken out of the water or out of use for upkeep.'],
  ['Put right', 'Repaired, replaced, adjusted or removed so that the condition described is gone.'],
  ['Examined in part', 'Some of the system could be seen or tried; the report says what could not, and why.'],
  ['Not reached', 'Nothing of the system could be seen or tried, so its condition is unknown.'],
  ['Length overall', 'From the foremost to the aftermost part of the hull, without removable fittings.'],
  ['Draught', 'From the waterline to the lowest point, as stated for the vessel in normal trim.'],
];

/** Words of the report with a meaning of their own. */
export function Terms() {
  return (
    <section id="terms">
      <h2>Words used</h2>
      <dl className="terms">
        {[...terms]
          .sort(([a], [b]) => a.localeCompare(b, 'en'))
          .map(([term, meaning]) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>{meaning}</dd>
            </div>
          ))}
      </dl>
    </section>
  );
}
