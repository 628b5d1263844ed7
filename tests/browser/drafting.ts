import type { KeyInput } from 'puppeteer';
import type { Visitor } from './visitor.ts';

/** One finding as the keyboard writes it. */
export interface TypedFinding {
  /** Words that find the known defect. */
  words: string;
  /** The title of the entry that they must find first. */
  entry: string;
  /** What goes into its slots, in their order. */
  slots: readonly string[];
  /** Numbers of photos as they are typed, such as `3, 7-9`; empty for none. */
  photos: string;
}

/** Counts what a hand does: every key pressed, a held modifier among them, and never the mouse. */
export class Keyboard {
  presses = 0;
  readonly #visitor: Visitor;

  constructor(visitor: Visitor) {
    this.#visitor = visitor;
  }

  /** Presses one key, with others held. */
  async press(key: KeyInput, ...held: KeyInput[]): Promise<void> {
    const { keyboard } = this.#visitor.page;
    for (const one of held) await keyboard.down(one);
    await keyboard.press(key);
    for (const one of held.toReversed()) await keyboard.up(one);
    this.presses += 1 + held.length;
  }

  async type(text: string): Promise<void> {
    await this.#visitor.page.keyboard.type(text);
    this.presses += [...text].length;
  }

  /** The spoken name of what has the focus: its label, else its words. */
  async focused(): Promise<string> {
    return this.#visitor.page.evaluate(() => {
      const at = document.activeElement;
      const takesLabel =
        at instanceof HTMLInputElement ||
        at instanceof HTMLTextAreaElement ||
        at instanceof HTMLSelectElement;
      const labels = takesLabel ? at.labels : null;
      const [label] = labels ?? [];
      return (label?.textContent ?? at?.getAttribute('aria-label') ?? at?.textContent ?? '').trim();
    });
  }

  /** Waits until what has the focus has that name. */
  async waitsAt(name: string): Promise<void> {
    for (const end = Date.now() + 10_000; Date.now() < end; ) {
      if ((await this.focused()).startsWith(name)) return;
      await new Promise((resolve) => setTimeout(resolve, 25));
    }
    throw new Error(`The focus is at “${await this.focused()}”, not at “${name}”.`);
  }

  /** Presses Tab until something of that name has the focus. */
  async tabTo(name: string, most = 60): Promise<void> {
    for (let presses = 0; presses < most; presses += 1) {
      await this.press('Tab');
      if ((await this.focused()).startsWith(name)) return;
    }
    throw new Error(`Tab never came to “${name}”.`);
  }

  /** Holds Shift and presses Tab until something of that name has the focus. */
  async tabBackTo(name: string, most = 60): Promise<void> {
    const { keyboard } = this.#visitor.page;
    await keyboard.down('Shift');
    this.presses += 1;
    try {
      for (let presses = 0; presses < most; presses += 1) {
        await this.press('Tab');
        if ((await this.focused()).startsWith(name)) return;
      }
    } finally {
      await keyboard.up('Shift');
    }
    throw new Error(`Tab backwards never came to “${name}”.`);
  }
}

/** From the list of findings or from a finding: the next new one, with the choice of a known defect ready. */
export async function recordNext(keyboard: Keyboard): Promise<void> {
  await keyboard.press('Enter', 'Control');
  await keyboard.waitsAt('Known defect');
}

/** Writes a finding from a known defect: some of its words, Enter, its slots, photos by number. Saves nothing. */
export async function draftFromEntry(
  visitor: Visitor,
  keyboard: Keyboard,
  finding: TypedFinding,
): Promise<void> {
  await keyboard.type(finding.words);
  await offersFirst(visitor, finding.entry);
  await keyboard.press('Enter');
  await visitor.page.waitForFunction(
    (title) => document.querySelector<HTMLInputElement>('input[maxlength="200"][required]')?.value === title,
    { timeout: 10_000 },
    finding.entry,
  );
  for (const [at, words] of finding.slots.entries()) {
    if (at > 0) await keyboard.press('Tab');
    await keyboard.type(words);
  }
  if (finding.photos) {
    if (!(await keyboard.focused()).startsWith('Photos by number'))
      await keyboard.tabTo('Photos by number', 12);
    await keyboard.type(finding.photos);
  }
}

/** Waits until the list of known defects offers that entry first. */
async function offersFirst(visitor: Visitor, entry: string): Promise<void> {
  let offered: string[] = [];
  for (const end = Date.now() + 10_000; Date.now() < end; ) {
    offered = await visitor.page.$$eval('[role="listbox"] [role="option"]', (options) =>
      options.map((option) => option.textContent),
    );
    if (offered[0]?.startsWith(entry)) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`The list doesn’t begin with “${entry}”:\n${offered.join('\n')}`);
}
