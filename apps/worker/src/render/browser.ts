import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer, { type Browser, type BrowserContext, type Page } from 'puppeteer';

/** Where Chromium is and what it must be started with; as `findChromium` of the platform answers. */
export interface FoundChromium {
  executablePath: string;
  args: readonly string[];
  env: Readonly<Record<string, string>>;
}

/** A page took longer than it was given. */
export class PageTimeout extends Error {
  override name = 'PageTimeout';
}

/** Chromium, or its process for this page, ended while it worked. Another attempt starts it again. */
export class BrowserCrash extends Error {
  override name = 'BrowserCrash';
}

// Nothing may be fetched: names resolve to nothing and the proxy is a port on which nobody listens. Interception
// of requests (see print-report.ts) is the first lock and this the second; it also holds for preconnections,
// which interception doesn't see.
const offlineArgs = [
  '--host-resolver-rules=MAP * ~NOTFOUND',
  '--proxy-server=http://127.0.0.1:1',
  '--proxy-bypass-list=<-loopback>',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-domain-reliability',
  '--disable-sync',
  '--no-pings',
  '--no-first-run',
];

/** How long closing a page may take before the whole browser is ended, in milliseconds. */
const closingMs = 2_000;

/**
 * One Chromium kept warm for a worker: started at the first page, started again when it has crashed. Each page
 * lives in a browser context of its own, so that nothing passes from one report to the next.
 */
export class WarmBrowser {
  readonly #find: () => Promise<FoundChromium>;
  #browser: Promise<Browser> | undefined;
  #current: Browser | undefined;
  #dataDir: string | undefined;

  constructor(find: () => Promise<FoundChromium>) {
    this.#find = find;
  }

  /** Starts Chromium if it isn't running and answers its version; throws when it can't be started. */
  async version(): Promise<string> {
    return (await this.#running()).version();
  }

  /** The process id of the running Chromium, or undefined when there is none. */
  async pid(): Promise<number | undefined> {
    return (await this.#browser)?.process()?.pid;
  }

  /**
   * Opens a fresh page with JavaScript off, hands it to `use`, and closes it whatever happens.
   *
   * @throws PageTimeout after `timeoutMs` milliseconds; the page is gone by then.
   * @throws BrowserCrash when Chromium or the page's process ends meanwhile.
   */
  async withPage<T>(timeoutMs: number, use: (page: Page) => Promise<T>): Promise<T> {
    const browser = await this.#running();
    let context: BrowserContext | undefined;
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<never>((_, reject) => {
      timer = setTimeout(() => reject(new PageTimeout(`Not done after ${timeoutMs / 1000} s.`)), timeoutMs);
    });
    let crash: ((error: BrowserCrash) => void) | undefined;
    const crashed = new Promise<never>((_, reject) => {
      crash = reject;
    });
    crashed.catch(() => undefined);
    const gone = () => crash?.(new BrowserCrash('Chromium ended while it worked.'));
    browser.once('disconnected', gone);
    const work = (async () => {
      context = await browser.createBrowserContext();
      const page = await context.newPage();
      page.once('error', (cause) => crash?.(new BrowserCrash('The page’s process ended.', { cause })));
      await page.setJavaScriptEnabled(false);
      return await use(page);
    })();
    // When the time is up the page is closed under the work's feet; its complaint about that concerns nobody.
    work.catch(() => undefined);
    try {
      return await Promise.race([work, late, crashed]);
    } catch (error) {
      // What the work complains of when its browser is gone comes before the news of that.
      if (!browser.connected && !(error instanceof PageTimeout)) {
        throw new BrowserCrash('Chromium ended while it worked.', { cause: error });
      }
      throw error;
    } finally {
      clearTimeout(timer);
      browser.off('disconnected', gone);
      await this.#closeOrKill(browser, context);
    }
  }

  /** Ends Chromium; a later page starts it again. */
  async close(): Promise<void> {
    const running = this.#browser;
    this.#browser = undefined;
    const browser = await running?.catch(() => undefined);
    await browser?.close();
    await this.#removeData();
  }

  async #running(): Promise<Browser> {
    this.#browser ??= this.#launch();
    try {
      return await this.#browser;
    } catch (error) {
      this.#browser = undefined;
      throw error;
    }
  }

  // Not when it disconnects: the remains of a crashed browser still write for a moment.
  async #removeData(): Promise<void> {
    const folder = this.#dataDir;
    this.#dataDir = undefined;
    if (folder) await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }

  async #launch(): Promise<Browser> {
    const { executablePath, args, env } = await this.#find();
    await this.#removeData();
    this.#dataDir = await mkdtemp(join(tmpdir(), 'garboard-chromium-'));
    const browser = await puppeteer.launch({
      executablePath,
      userDataDir: this.#dataDir,
      args: [...args, ...offlineArgs],
      // Not the environment of the worker, which holds its passwords.
      env: { ...env },
      headless: 'shell',
      // Over a pipe Chromium ends by itself when this process is killed.
      pipe: true,
    });
    this.#current = browser;
    browser.once('disconnected', () => this.#forget(browser));
    return browser;
  }

  // Only if it hasn't been replaced already.
  #forget(browser: Browser): void {
    if (this.#current === browser) this.#browser = this.#current = undefined;
  }

  async #closeOrKill(browser: Browser, context: BrowserContext | undefined): Promise<void> {
    if (!browser.connected) return;
    const closed = context
      ? context.close().then(
          () => true,
          () => false,
        )
      : Promise.resolve(false);
    const tooLong = new Promise<false>((resolve) => setTimeout(() => resolve(false), closingMs).unref());
    if (await Promise.race([closed, tooLong])) return;
    this.#forget(browser);
    browser.process()?.kill('SIGKILL');
  }
}
