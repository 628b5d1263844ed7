import { slotAsked } from '@garboard/trade/catalogue/slots';
import { useEffect, useRef, useState } from 'react';
import { TextField } from '../../ui/Field.tsx';
import { listed } from '../../ui/format.ts';
import type { SlotTexts } from './slotTexts.ts';
import { refilled, slotsIn } from './slotTexts.ts';

/**
 * The gaps of the texts in small fields. What is written there goes into every text that still reads as it was
 * filled; a text that was edited by hand is left alone.
 */
export function SlotFields({
  template,
  draft,
  set,
  focus,
}: {
  /** The texts with their slots, as they were when the finding was begun. */
  template: SlotTexts;
  draft: SlotTexts;
  set: (change: Partial<SlotTexts>) => void;
  /** Takes the focus when it appears, as the next thing to do after an entry was chosen. */
  focus: boolean;
}) {
  const [words, setWords] = useState<Readonly<Record<string, string>>>({});
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    if (focus) box.current?.querySelector('input')?.focus();
  }, [focus]);
  const slots = slotsIn(template);
  const open = slotsIn(draft);
  if (!slots.length) return null;
  return (
    <section ref={box} className="boxed" aria-label="To complete the texts">
      <h2>To complete the texts</h2>
      <div className="slot-fields">
        {slots.map((slot) => {
          const { label, example } = slotAsked(slot);
          return (
            <TextField
              key={slot}
              label={label}
              hint={`Such as ${example}`}
              lang={navigator.language}
              spellCheck
              value={words[slot] ?? ''}
              onChange={(value) => {
                const next = { ...words, [slot]: value };
                set(refilled(template, draft, words, next));
                setWords(next);
              }}
            />
          );
        })}
      </div>
      {open.length ? (
        <p className="soft small">
          Still open in the texts: {listed(open.map((slot) => slotAsked(slot).label.toLowerCase()))}.
        </p>
      ) : null}
    </section>
  );
}
