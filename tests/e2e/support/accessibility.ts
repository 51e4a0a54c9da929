import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import type axe from 'axe-core';

const script = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * Breaches of WCAG 2.2 A and AA that axe-core finds on the page, one line each: all, or those of contrast alone. Among
 * all is a text that was never put into words: types do not hold it back from a page.
 */
export async function accessibilityFaults(
  page: Page,
  of: 'all' | 'contrast' = 'all',
): Promise<string[]> {
  // Evaluated by the debugger: the page's own policy lets no script in from outside.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(script);
  const runOnly =
    of === 'all'
      ? ({ type: 'tag', values: tags } as const)
      : ({ type: 'rule', values: ['color-contrast'] } as const);
  return page.evaluate(async (asked) => {
    const { run } = Reflect.get(window, 'axe') as typeof axe;
    const { violations } = await run(document, {
      runOnly: { ...asked, values: [...asked.values] },
      resultTypes: ['violations'],
    });
    const wordless = asked.type === 'tag' && document.body.innerText.includes('[object ');
    return [
      ...(wordless ? ['a text is shown that was never put into words'] : []),
      ...violations.flatMap(({ id, help, nodes }) =>
        nodes.map(
          (node) => `${id} (${help}): ${node.target.join(' ')} ${node.failureSummary ?? ''}`,
        ),
      ),
    ];
  }, runOnly);
}
