import type { Browser } from 'puppeteer';
import { type Complaints, Visitor } from './visitor.ts';

/** A narrow one, in CSS pixels. */
const narrow = { width: 360, height: 740 };

/** A telephone: one person's browser with the capture page, worked by what stands on it. */
export class Telephone {
  readonly visitor: Visitor;
  readonly #earlier: Visitor | null;

  private constructor(visitor: Visitor, earlier: Visitor | null = null) {
    this.visitor = visitor;
    this.#earlier = earlier;
  }

  static async arrive(browser: Browser, url: string, complaints: Complaints): Promise<Telephone> {
    return Telephone.#of(await Visitor.arrive(browser, url, complaints));
  }

  static async #of(visitor: Visitor, earlier: Visitor | null = null): Promise<Telephone> {
    await visitor.page.setViewport(narrow);
    return new Telephone(visitor, earlier);
  }

  /** Another window of the same telephone, at an address; the first stays as it is. */
  async another(path: string): Promise<Telephone> {
    const next = await Telephone.#of(await this.visitor.another(), this.visitor);
    await next.visitor.goTo(path);
    return next;
  }

  async leave(): Promise<void> {
    await (this.#earlier ?? this.visitor).leave();
  }

  /** Waits until the page can be opened without a network and has heard of everything. */
  async madeReady(personId: string, surveyId: string, kinds: number): Promise<void> {
    await this.visitor.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    const end = Date.now() + 60_000;
    for (;;) {
      const heard = await this.#heard(`garboard-capture-${personId}`);
      const forms = heard.filter((key) => key.startsWith('kind:')).length;
      if (forms >= kinds && heard.includes(`findings:${surveyId}`)) return;
      if (Date.now() > end) throw new Error(`The telephone has only heard of: ${heard.join(' ')}`);
      await new Promise((done) => setTimeout(done, 300));
    }
  }

  #heard(name: string): Promise<string[]> {
    return this.visitor.page.evaluate(async (database) => {
      const all = await indexedDB.databases();
      if (!all.some((one) => one.name === database)) return [];
      return new Promise<string[]>((done, fail) => {
        const opening = indexedDB.open(database);
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const asking = opening.result.transaction('answers').objectStore('answers').getAllKeys();
          asking.onsuccess = () => {
            opening.result.close();
            done(asking.result.map(String));
          };
        };
      });
    }, name);
  }

  /** Taps a large target by its heading. */
  async tap(title: string): Promise<void> {
    await this.visitor.page.bringToFront();
    await this.visitor.page.locator(`::-p-xpath(//a[strong[normalize-space()="${title}"]])`).click();
  }

  /** Sends nothing and gets nothing, as the device itself sees it. */
  async outOfSignal(out: boolean): Promise<void> {
    await this.visitor.page.setOfflineMode(out);
  }

  /** Slow enough that a photo takes a while. */
  async slow(latency: number): Promise<void> {
    await this.visitor.page.emulateNetworkConditions(
      latency ? { latency, download: 1_000_000, upload: 1_000_000 } : null,
    );
  }

  /** Leaves the portal this much room in all, until it is lifted. */
  async limitRoom(quotaSize: number): Promise<{ lift: () => Promise<void> }> {
    const { page } = this.visitor;
    const { origin } = new URL(page.url());
    const session = await page.createCDPSession();
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize });
    return { lift: () => session.send('Storage.overrideQuotaForOrigin', { origin }) };
  }

  /** The process of the page dies, without a word to it. */
  async crash(): Promise<void> {
    const session = await this.visitor.page.createCDPSession();
    await Promise.race([
      session.send('Page.crash').catch(() => undefined),
      new Promise((r) => setTimeout(r, 1000)),
    ]);
  }

  /** Keeps a picture of the whole page, as if the telephone were as long as that. */
  async picture(name: string): Promise<void> {
    const { page } = this.visitor;
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    if (wide > narrow.width) throw new Error(`${name} is ${wide} px wide.`);
    const height = await page.evaluate(() => {
      const main = document.querySelector('main');
      return main ? window.innerHeight + main.scrollHeight - main.clientHeight : window.innerHeight;
    });
    await page.setViewport({ ...narrow, height: Math.min(Math.max(narrow.height, height), 3000) });
    await page.screenshot({ path: `tests/artefacts/browser/${name}.png` });
    await page.setViewport(narrow);
  }
}
