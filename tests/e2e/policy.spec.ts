import { readFileSync } from 'node:fs';
import { filesUnder } from '../../app/build/files-under.ts';
import { expect, test } from './support/app-page.ts';
import { guard } from './support/guard.ts';
import { readyOffline } from './support/ready-offline.ts';
import { releaseFolder } from './support/release-folder.ts';

test.use({ serviceWorkers: 'allow' });

test('the policy stops scripts, styles and addresses from outside', async ({ page, guarded }) => {
  guarded.allow(/policy breach|Content Security Policy|outside request/);
  await page.goto('./');
  await page.evaluate(async () => {
    const found: string[] = [];
    Object.assign(window, { breaches: found });
    document.addEventListener('securitypolicyviolation', (breach) => {
      found.push(breach.effectiveDirective);
    });
    const script = document.createElement('script');
    script.textContent = 'window.__pwned = 1';
    document.head.append(script);
    const style = document.createElement('style');
    style.textContent = 'body { display: none }';
    document.head.append(style);
    const image = document.createElement('img');
    image.src = 'https://example.invalid/picture.png';
    document.body.append(image);
    const base = document.createElement('base');
    base.href = 'https://example.invalid/';
    document.head.append(base);
    await fetch('https://example.invalid/').catch(() => undefined);
    // In a task of its own: while the debugger evaluates, the browser lets eval through. And indirect,
    // so that this very text is no eval in the eyes of a linter.
    setTimeout(() => {
      const evaluate = Reflect.get(globalThis, 'eval') as (text: string) => unknown;
      try {
        evaluate('window.__pwned = 2');
      } catch {
        found.push('eval refused');
      }
    });
  });
  const breaches = () => page.evaluate(() => Reflect.get(window, 'breaches') as string[]);
  await expect
    .poll(breaches)
    .toEqual(
      expect.arrayContaining([
        'script-src-elem',
        'style-src-elem',
        'img-src',
        'base-uri',
        'connect-src',
        'eval refused',
      ]),
    );
});

test.describe('machine code', () => {
  test.use({ serviceWorkers: 'block' }); // what it fetches can't be made up here

  test('is refused to the page and compiled in its workers', async ({ page, guarded }) => {
    guarded.allow(/policy breach|Content Security Policy/);
    const compile = `let said = 'compiled';
try { new WebAssembly.Module(Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0)); } catch { said = 'refused'; }
`;
    await page.route('**/try-*.js', (route) => {
      const tell = route.request().url().endsWith('try-page.js')
        ? 'globalThis.said = said;'
        : 'postMessage(said);';
      return route.fulfill({ contentType: 'text/javascript', body: compile + tell });
    });
    await page.goto('./');
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.src = './try-page.js';
      document.head.append(script);
    });
    await expect.poll(() => page.evaluate(() => Reflect.get(globalThis, 'said'))).toBe('refused');
    const inWorker = page.evaluate(
      () =>
        new Promise((done) => {
          const worker = new Worker('./try-worker.js', { type: 'module' });
          worker.onmessage = ({ data }) => done(data);
          worker.onerror = ({ message }) => done(message);
        }),
    );
    expect(await inWorker).toBe('compiled');
  });
});

test('the guard of these tests sees what it is there for', async ({ browser, host, outside }) => {
  const context = await browser.newContext({ proxy: outside.proxy });
  const watching = guard();
  await watching.watch(context);
  const page = await context.newPage();
  await page.goto(host.url);
  await page.evaluate(() => {
    Object.assign(window, { __pwned: 3 });
    console.error('a console error');
    void Promise.reject(new Error('a rejection'));
    const script = document.createElement('script');
    script.textContent = 'window.never = 1';
    document.head.append(script);
  });
  const faults = async () => (await watching.faults()).join('\n');
  for (const part of ['script from outside ran', 'a console error', 'a rejection', 'policy breach'])
    await expect.poll(faults).toContain(part);
  await context.close();
});

test('the trap catches what a page without a policy asks for', async ({ browser, host }) => {
  const { outsideTrap } = await import('./support/outside-trap.ts');
  const trap = await outsideTrap();
  const context = await browser.newContext({ proxy: trap.proxy });
  const page = await context.newPage();
  await page.goto(`${host.url}icons/icon.svg`); // has no policy of its own
  await page.evaluate(() => fetch('http://example.invalid/tale').catch(() => undefined));
  expect(trap.caught).toEqual(['http://example.invalid/tale']);
  await context.close();
  await trap.close();
});

test('a whole start breaks no rule, and the page sends no referrer', async ({ page }) => {
  await page.goto('./');
  await readyOffline(page);
  await page.reload();
  await expect(page.locator('#app')).not.toBeEmpty();
  await expect(page.locator('meta[name=referrer]')).toHaveAttribute('content', 'no-referrer');
});

test('what is built holds no eval and no inline script or style', async () => {
  const built = await filesUnder(releaseFolder('v1'));
  for (const file of built.filter((name) => name.endsWith('.js'))) {
    const code = readFileSync(file, 'utf8');
    expect(code, file).not.toMatch(/\beval\s*\(|\bnew Function\b|[^.\w]Function\s*\(\s*["'`]/);
  }
  for (const file of built.filter((name) => name.endsWith('.html'))) {
    const page = readFileSync(file, 'utf8');
    expect(page).not.toMatch(/<script(?![^>]*\ssrc=)|<style|\sstyle=|\son\w+=/i);
    expect(page).not.toMatch(/\b(src|href)="(https?:)?\/\//);
  }
});
