import type { Clearance } from '@garboard/contract/clearances';
import type { Finding } from '@garboard/contract/findings';
import { useEffect } from 'react';
import { Button } from '../../../ui/Button.tsx';
import { count } from '../../../ui/format.ts';
import { useEvidenceDraft } from './useEvidenceDraft.ts';

/** Evidence begun on this device that can't be sent any more; that which had arrived after all is forgotten. */
export function LeftOver({
  finding,
  sent,
  timeZone,
}: {
  finding: Finding;
  sent: readonly Clearance[];
  timeZone: string;
}) {
  const { value, begun, forget } = useEvidenceDraft(finding, timeZone);
  const arrived = Boolean(value?.attempt && sent.some((one) => one.statement === value.statement.trim()));
  useEffect(() => {
    if (arrived) void forget();
  });
  if (!begun || !value || arrived) return null;
  return (
    <section className="notice">
      <p>You had begun evidence here that is not asked for any more. It was not sent:</p>
      <p className="text">{value.statement || 'Nothing was written yet.'}</p>
      {value.files.length ? <p>{count(value.files.length, 'file')} with it.</p> : null}
      <Button onClick={() => void forget()}>Throw it away</Button>
    </section>
  );
}
