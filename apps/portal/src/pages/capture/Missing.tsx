import { Frame } from './Frame.tsx';

/** Says that this telephone doesn't know a survey or system. */
export function Missing({ loading }: { loading: boolean }) {
  if (loading) return null;
  return (
    <Frame title="Not on this telephone" back={{ href: '/capture', label: 'the surveys' }}>
      <p>
        This telephone has not heard of it. Go back and choose again, or open it once where there is signal.
      </p>
    </Frame>
  );
}
