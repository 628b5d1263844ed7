import { useId } from 'react';

/** How far something has come, between 0 and 1; without a value it is only known to be going on. */
export function ProgressBar({ label, value }: { label: string; value?: number }) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id} className="small">
        {label}
        {value === undefined ? null : ` ${Math.round(value * 100)} %`}
      </label>
      <progress id={id} max={1} value={value} />
    </div>
  );
}
