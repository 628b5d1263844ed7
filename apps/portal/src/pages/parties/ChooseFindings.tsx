import type { Finding } from '@garboard/contract/findings';
import { CheckboxGroup } from '../../ui/Field.tsx';

/** Those that wait for the owner: what a yard is usually asked to put right. */
export const toPutRight = (findings: readonly Finding[]): string[] =>
  findings
    .filter(
      (f) => f.requiresClearing && (f.state === 'open' || f.state === 'returned' || f.state === 'draft'),
    )
    .map((f) => f.id);

/** Which findings a yard puts right, by number and title. */
export function ChooseFindings({
  findings,
  values,
  onChange,
}: {
  findings: readonly Finding[];
  values: readonly string[];
  onChange: (values: string[]) => void;
}) {
  if (findings.length === 0) {
    return <p className="soft">There are no findings yet. You can say later which ones it puts right.</p>;
  }
  const options = Object.fromEntries(findings.map((f) => [f.id, `${f.number}. ${f.title}`]));
  return (
    <CheckboxGroup
      label="Findings it puts right"
      hint="It sees these and their photos, nothing else of the survey."
      values={values}
      options={options}
      onChange={onChange}
    />
  );
}
