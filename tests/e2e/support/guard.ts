import type { BrowserContext, Page } from '@playwright/test';

export interface Guard {
  /** Watches every page of a context from now on. */
  watch(context: BrowserContext): Promise<void>;
  /** A fault this test provokes on purpose. */
  allow(fault: RegExp): void;
  /** All faults so far that were not allowed. */
  faults(): Promise<string[]>;
}

/**
 * Holds for every page of every test: no unhandled error or rejection, no console error, no breach of
 * the Content-Security-Policy, no request outside the own origin, no script from a name or a file.
 */
export function guard(): Guard {
  const found: string[] = [];
  const allowed: RegExp[] = [];
  const pages = new Set<Page>();

  function watchPage(page: Page): void {
    pages.add(page);
    page.on('close', () => pages.delete(page));
    page.on('pageerror', (error) => found.push(`unhandled: ${error}`));
    page.on('crash', () => found.push('the page crashed'));
    page.on('console', (message) => {
      if (message.type() === 'error') found.push(`console: ${message.text()}`);
    });
    page.on('request', (request) => {
      const { protocol, hostname } = new URL(request.url());
      if (['blob:', 'data:', 'about:'].includes(protocol) || hostname === '127.0.0.1') return;
      found.push(`outside request: ${request.url()}`);
    });
  }

  return {
    async watch(context) {
      await context.addInitScript(() => {
        document.addEventListener('securitypolicyviolation', (breach) => {
          console.error(`policy breach: ${breach.effectiveDirective} ${breach.blockedURI}`);
        });
      });
      context.on('page', watchPage);
      context.pages().forEach(watchPage);
    },
    allow(fault) {
      allowed.push(fault);
    },
    async faults() {
      for (const page of pages) {
        const pwned = await page.evaluate(() => '__pwned' in window).catch(() => false);
        if (pwned) found.push(`script from outside ran on ${page.url()}`);
      }
      return found.filter((fault) => !allowed.some((pattern) => pattern.test(fault)));
    },
  };
}
