import { execFile } from 'node:child_process';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { findChromium } from '@garboard/platform/chromium';
import { withFileLock } from '@garboard/platform/file-lock';
import { repositoryRoot } from '@garboard/platform/paths';
import puppeteer, { type Browser, type BrowserContext, type ElementHandle, type Page } from 'puppeteer';
import { chromiumDir } from '../support/worker.ts';

const patience = { timeout: 30_000 };
const folder = 'tests/artefacts/browser';

/** What went wrong in any window, whoever's it was: script errors, content-policy violations, failed requests. */
export type Complaints = string[];

/** Answers that belong to the story: nobody is signed in yet, and the second of two saves. */
const expected = [/^401 GET \/v1\/me$/, /^412 PATCH \/v1\/findings\//];

let portal: Promise<string> | undefined;

/** The portal built from the tree as it is, by whoever needs it first; `npm test` has done so before any test runs. */
export function buildPortal(): Promise<string> {
  const prepare = join(repositoryRoot(), 'packages/platform/bin/prepare.mjs');
  const built = join(repositoryRoot(), 'apps/portal/dist');
  // Vitest's own NODE_ENV would make it a development build, in which lists aren't virtualised either.
  const env = { ...process.env, NODE_ENV: 'production' };
  portal ??= withFileLock(
    join(repositoryRoot(), 'node_modules/.portal.lock'),
    async () => {
      await promisify(execFile)(process.execPath, [prepare], { env });
      return built;
    },
    120_000,
  );
  return portal;
}

let running: Promise<Browser> | undefined;

async function launch(): Promise<Browser> {
  await mkdir(folder, { recursive: true });
  const { executablePath, args, env } = await findChromium({ dataDir: chromiumDir });
  const browser = await puppeteer.launch({
    ...{ executablePath, args: [...args], env: { ...env }, protocolTimeout: 60_000 },
  });
  browser.once('disconnected', () => {
    running = undefined;
  });
  return browser;
}

/**
 * The browser of this process, which ends with it: to start one for each file costs more than most files do in it. What
 * a file gets closes the windows that it has opened, and only these.
 */
export async function openBrowser(): Promise<Browser> {
  running ??= launch().catch((error) => {
    running = undefined;
    throw error;
  });
  const browser = await running;
  const opened: BrowserContext[] = [];
  const own = {
    createBrowserContext: async () => {
      const context = await browser.createBrowserContext();
      opened.push(context);
      return context;
    },
    close: async () => {
      // One that was left is closed already.
      await Promise.all(opened.splice(0).map((context) => context.close().catch(() => undefined)));
    },
  };
  return new Proxy(browser, {
    get(target, name) {
      if (name in own) return own[name as keyof typeof own];
      const value = Reflect.get(target, name, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}

/** One window, worked by what a person sees: labels, names and words, never by class names. */
export class Visitor {
  readonly page: Page;
  readonly #context: BrowserContext;
  readonly #complaints: Complaints;
  readonly #url: string;

  private constructor(page: Page, context: BrowserContext, complaints: Complaints, url: string) {
    this.page = page;
    this.#context = context;
    this.#complaints = complaints;
    this.#url = url;
  }

  /** A fresh browser context, with cookies of its own. */
  static async arrive(browser: Browser, url: string, complaints: Complaints): Promise<Visitor> {
    return Visitor.#open(await browser.createBrowserContext(), complaints, url);
  }

  static async #open(context: BrowserContext, complaints: Complaints, url: string): Promise<Visitor> {
    const page = await context.newPage();
    await page.setViewport({ width: 1280, height: 900 });
    page.setDefaultTimeout(patience.timeout);
    page.on('pageerror', (error) => complaints.push(`script: ${String(error)}`));
    page.on('console', (message) => {
      // Failed requests are judged below, by their status.
      if (message.type() !== 'error' || message.text().startsWith('Failed to load resource')) return;
      complaints.push(`console: ${message.text()}`);
    });
    page.on('response', (response) => {
      const line = `${response.status()} ${response.request().method()} ${new URL(response.url()).pathname}`;
      if (response.status() >= 400 && !expected.some((known) => known.test(line))) complaints.push(line);
    });
    await page.evaluateOnNewDocument(() => {
      document.addEventListener('securitypolicyviolation', (event) => {
        console.error(
          `Content policy: ${event.violatedDirective} ${event.blockedURI} at ${event.sourceFile}:${event.lineNumber}`,
        );
      });
    });
    return new Visitor(page, context, complaints, url);
  }

  /** A second tab of the same person. */
  another(): Promise<Visitor> {
    return Visitor.#open(this.#context, this.#complaints, this.#url);
  }

  async goTo(path: string): Promise<void> {
    await this.page.goto(new URL(path, this.#url).href, patience);
  }

  /** Loads the page anew, a tenth of a second after anything last moved at the soonest: nobody's hand is quicker. */
  async reload(): Promise<void> {
    await this.standsStill(100);
    await this.page.reload();
  }

  async leave(): Promise<void> {
    await this.#context.close();
  }

  async find(role: string, name: string): Promise<ElementHandle> {
    const found = await this.page.waitForSelector(`::-p-aria([name="${name}"][role="${role}"])`, patience);
    if (!found) throw new Error(`No ${role} named ${name}.`);
    return found;
  }

  async click(role: string, name: string): Promise<void> {
    await this.page.bringToFront();
    await this.page
      .locator(`::-p-aria([name="${name}"][role="${role}"])`)
      .setTimeout(patience.timeout)
      .click()
      .catch(async (error) => {
        const where = await this.page.evaluate(() => location.pathname);
        const file = `unfound-${role}-${name.replaceAll(/\W+/g, '-').slice(0, 40)}`;
        await this.picture(file);
        throw new Error(
          `No ${role} “${name}” could be pressed at ${where} (${file}.png):\n${await this.text()}`,
          {
            cause: error,
          },
        );
      });
  }

  async press(name: string): Promise<void> {
    await this.click('button', name);
  }

  /** Lists grow while their parts come in; a link is followed once they stand still, or the click lands beside it. */
  async follow(name: string): Promise<void> {
    // A page that is left meanwhile has nothing to stand still; the click waits for the next one.
    await this.standsStill(100).catch(() => undefined);
    await this.click('link', name);
  }

  /** Writes into the field, in place of what it held. */
  async fill(name: string, text: string, role = 'textbox'): Promise<void> {
    await this.page.bringToFront();
    await this.page
      .locator(`::-p-aria([name="${name}"][role="${role}"])`)
      .setTimeout(patience.timeout)
      .fill(text);
  }

  /** Sets a date field whose label begins with that: written by key it would depend on the browser's language. */
  async setDay(label: string, day: string): Promise<void> {
    const path = `//input[@type="date"][@id=//label[starts-with(normalize-space(), "${label}")]/@for]`;
    const field = await this.page.waitForSelector(`::-p-xpath(${path})`, patience);
    await (field as ElementHandle<HTMLInputElement>).evaluate((input, value) => {
      Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(input, value);
      input.dispatchEvent(new Event('input', { bubbles: true }));
    }, day);
  }

  /** Chooses an option by its words. */
  async choose(name: string, option: string): Promise<void> {
    const list = await this.find('combobox', name);
    const value = await list.evaluate((element, words) => {
      const options = element instanceof HTMLSelectElement ? [...element.options] : [];
      return options.find((one) => one.text === words)?.value ?? null;
    }, option);
    if (value === null) throw new Error(`“${name}” doesn't offer “${option}”.`);
    await list.select(value);
  }

  /** Gives files to the picker with that label; its spoken name ends in the files chosen, so the label is sought. */
  async give(name: string, files: string[]): Promise<void> {
    const path = `//input[@type="file"][@id=//label[normalize-space()="${name}"]/@for]`;
    const picker = await this.page.waitForSelector(`::-p-xpath(${path})`, patience);
    await (picker as ElementHandle<HTMLInputElement>).uploadFile(...files);
  }

  /** Waits until nothing has changed in the page for so many milliseconds and its pictures are there. */
  async standsStill(quietMs: number): Promise<void> {
    await this.page.evaluate(async (quiet) => {
      let last = performance.now();
      const watch = new MutationObserver(() => {
        last = performance.now();
      });
      watch.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
      const busy = () =>
        performance.now() - last < quiet ||
        [...document.images].some((image) => !image.complete && image.loading !== 'lazy');
      for (const end = last + 8_000; busy() && performance.now() < end; ) {
        await new Promise((done) => setTimeout(done, 20));
      }
      watch.disconnect();
    }, quietMs);
  }

  /** Waits until the words stand on the page. */
  async reads(words: string): Promise<void> {
    await this.page
      .waitForFunction((text) => document.body.textContent.includes(text), patience, words)
      .catch(async (error) => {
        throw new Error(`“${words}” isn't on the page:\n${await this.text()}`, { cause: error });
      });
  }

  /** Waits until the words are gone from the page. */
  async readsNoMore(words: string): Promise<void> {
    await this.page.waitForFunction((text) => !document.body.textContent.includes(text), patience, words);
  }

  text(): Promise<string> {
    return this.page.evaluate(() => document.body.textContent);
  }

  async signIn(person: { email: string }, password: string): Promise<void> {
    await this.goTo('/');
    await this.fill('E-mail', person.email);
    await this.fill('Password', password);
    await this.press('Sign in');
    await this.reads('Sign out');
  }

  /** Presses Tab until the thing of that name has the focus. */
  async tabTo(name: string): Promise<void> {
    for (let presses = 0; presses < 40; presses += 1) {
      await this.page.keyboard.press('Tab');
      const here = await this.page.evaluate(() => {
        const at = document.activeElement;
        const label = at instanceof HTMLInputElement ? at.labels?.[0] : at;
        return label?.textContent ?? '';
      });
      if (here === name) return;
    }
    throw new Error(`Tab never came to “${name}”.`);
  }

  /** Keeps a picture of the whole page among the test's artefacts, when PICTURES=1 asks for them: drawing takes long. */
  async picture(name: string): Promise<void> {
    if (process.env.PICTURES !== '1') return;
    await this.page.bringToFront();
    await this.page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
  }

  /** How wide the page is on a narrow telephone, in CSS pixels; keeps a picture. */
  async widthAt360(name: string): Promise<number> {
    await this.page.setViewport({ width: 360, height: 740 });
    // Lists that are laid out by script follow a moment later: the width that stays is the page's.
    const width = await this.page.evaluate(async () => {
      const widths: number[] = [];
      for (const end = performance.now() + 3_000; performance.now() < end; ) {
        widths.push(document.documentElement.scrollWidth);
        if (widths.length > 4 && new Set(widths.slice(-4)).size === 1) break;
        await new Promise((done) => setTimeout(done, 50));
      }
      return widths.at(-1) ?? 0;
    });
    await this.picture(`${name}-360`);
    await this.page.setViewport({ width: 1280, height: 900 });
    return width;
  }
}
