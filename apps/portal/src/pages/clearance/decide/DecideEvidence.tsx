import type { Clearance } from '@garboard/contract/clearances';
import type { Finding } from '@garboard/contract/findings';
import type { Decision } from '@garboard/trade/vocabulary';
import { useQueryClient } from '@tanstack/react-query';
import { call } from '../../../api/client.ts';
import { isStatus } from '../../../api/problems.ts';
import { useAction } from '../../../api/queries.ts';
import { useKeptDraft } from '../../../app/keptDraft.ts';
import { useHeldWriting } from '../../../app/leaving.tsx';
import { useMe } from '../../../app/session.tsx';
import { Button } from '../../../ui/Button.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { Checkbox } from '../../../ui/Field.tsx';
import { DecideOne } from './DecideOne.tsx';
import { bodyOf, type DecisionDraft, undecided } from './decisionDraft.ts';

const said: Record<Decision, string> = {
  accept: 'Accepted. The finding is cleared.',
  return: 'Returned to the owner with your reason.',
  'accept-as-is': 'Accepted as it is, with the limit you stated.',
};

const touches = [
  'listClearances',
  'getFinding',
  'listFindings',
  'listFindingEvents',
  'listRecommendations',
  'getSurvey',
  'listSurveys',
] as const;

/** The decision on evidence, for all of it or item by item; it is final. */
export function DecideEvidence({
  clearance,
  finding,
  onTooLate,
}: {
  clearance: Clearance;
  finding: Finding;
  /** Told of the refusal when somebody else decided first. */
  onTooLate: (error: unknown) => void;
}) {
  const queryClient = useQueryClient();
  const draft = useKeptDraft<DecisionDraft>(useMe().person.id, `decision:${clearance.id}`, () => ({
    whole: undecided,
    apart: false,
    items: {},
  }));
  const decide = useAction({
    run: async (now: DecisionDraft) => {
      try {
        return await call('decideClearance', { params: { id: clearance.id }, body: bodyOf(now, clearance) });
      } catch (error) {
        if (isStatus(error, 409)) {
          onTooLate(error);
          const touched = new Set<unknown>(touches);
          void queryClient.invalidateQueries({ predicate: ({ queryKey }) => touched.has(queryKey[0]) });
        }
        throw error;
      }
    },
    done: (_, { apart, whole }) => {
      if (apart || !whole.decision) return 'Decided, item by item.';
      const others = finding.itemsLeft > clearance.items.length;
      return whole.decision === 'accept' && others ? 'Accepted. Other items are left.' : said[whole.decision];
    },
    touches,
    onDone: () => void draft.drop(),
  });
  const { value, set } = draft;
  useHeldWriting(Boolean(value?.whole.decision || value?.apart));
  if (!value) return null;
  const several = clearance.items.length > 1;
  const final = 'It can’t be changed afterwards.';
  return (
    <form
      className="stack measure section"
      onSubmit={(event) => {
        event.preventDefault();
        decide.run(value);
      }}
    >
      {several ? (
        <Checkbox
          label={`Decide on each of the ${clearance.items.length} items by itself`}
          checked={value.apart}
          onChange={(apart) => set({ ...value, apart })}
        />
      ) : null}
      {value.apart ? (
        <>
          <p>{final}</p>
          {clearance.items.map(({ itemId, text }, at) => (
            <DecideOne
              key={itemId}
              label={text}
              name={`decision-${itemId}`}
              pointer={`/items/${at}`}
              value={value.items[itemId] ?? undecided}
              set={(one) => set({ ...value, items: { ...value.items, [itemId]: one } })}
              error={decide.error}
            />
          ))}
        </>
      ) : (
        <DecideOne
          label="Your decision"
          hint={final}
          name={`decision-${clearance.id}`}
          value={value.whole}
          set={(whole) => set({ ...value, whole })}
          error={decide.error}
        />
      )}
      {isStatus(decide.error, 409) ? null : <ErrorNotice error={decide.error} />}
      <div className="actions">
        <Button kind="main" type="submit" busy={decide.busy} busyLabel="Recording…">
          Record the decision
        </Button>
      </div>
    </form>
  );
}
