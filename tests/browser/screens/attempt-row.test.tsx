import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { AttemptRow } from '../../../app/screens/record/attempt-row.tsx';
import { device, minute, steps } from '../../support/session/session-log.ts';
import { shown } from './shown.ts';

test('many attempts scroll in their own row, and do not widen the page', async () => {
  await page.viewport(320, 640);
  const it = device();
  const sessions = Array.from({ length: 7 }, (_, i) => {
    const from = it.events.length;
    it.log({ kind: 'started' });
    it.wait(95 * minute);
    it.log({ kind: 'finished' });
    const events = it.events.slice(from).map((event, seq) => ({ ...event, seq }));
    return { sessionId: `s${i}`, paintingId: 'meadow', steps, events };
  });
  const screen = shown(
    <AttemptRow
      easel={{ sessions: signal(sessions) }}
      keepsakes={{ photo: async () => null }}
      paintingId="meadow"
      current="s6"
    />,
  );
  const links = page.getByRole('link');
  expect(links.elements()).toHaveLength(7);
  await expect
    .element(links.nth(6))
    .toHaveTextContent(/^No photoThe seventh\d+ \w+ 2031, 1 h 35 min$/);
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(320);
  screen.leave();
});
