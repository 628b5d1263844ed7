/** Says so when the words typed are in no entry and the nearest were taken for them. */
export function ReadAs({ typed, readAs }: { typed: string; readAs: string | null | undefined }) {
  return (
    <p className="soft small read-as" role="status">
      {typed && readAs ? `Nothing says “${typed.trim()}”. Shown for “${readAs}”.` : null}
    </p>
  );
}
