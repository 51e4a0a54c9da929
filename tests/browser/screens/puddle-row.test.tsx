import { expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { cssColour } from '../../../app/core/colour/lab.ts';
import { PuddleRow } from '../../../app/ui/mixes/puddle-row.tsx';
import { madePlan } from './made-plan.ts';
import { shown } from './shown.ts';

const plan = await madePlan();
const mixes = plan.mixes.filter(({ wash, puddle }) => wash === 1 && puddle !== null);
const familyName = (id: number): string => `colour ${id}`;
const row = () => page.getByTestId('puddle-row').element();
const colours = (host: Element) =>
  [...host.querySelectorAll<HTMLElement>('[aria-hidden] > span')].map(
    ({ style }) => style.background,
  );

test('each puddle once: its letter, what it is for, thin before strong', () => {
  const screen = shown(<PuddleRow mixes={mixes} familyName={familyName} />);
  const letters = [...new Set(mixes.map(({ puddle }) => puddle))];
  const items = [...row().querySelectorAll('li')];
  expect(items.map((item) => item.querySelector('strong')?.textContent)).toEqual(letters);
  const own = mixes.filter(({ puddle }) => puddle === letters[0]);
  expect(items[0]?.textContent).toContain(`colour ${own[0]?.family}`);
  const shades = own.flatMap(({ weaker }) => (weaker ? 2 : 1)).reduce((sum, n) => sum + n, 0);
  expect(items[0]?.querySelectorAll('[aria-hidden] > span')).toHaveLength(shades);
  screen.leave();
});

test('for touches of the point the colour of the darkest is shown; without puddles there is no row', () => {
  const lab = [31, 2, 3] as const;
  const mix = mixes[0]?.id ?? '';
  const marks = [
    { kind: 'accent', shape: 0, mix, load: 9, lab: [40, 2, 3] },
    { kind: 'accent', shape: 1, mix, load: 9, lab },
  ] as const;
  const screen = shown(
    <PuddleRow mixes={mixes.slice(0, 1)} marks={marks} familyName={familyName} />,
  );
  const sample = document.createElement('i');
  sample.style.background = cssColour(lab);
  expect(colours(row())).toEqual([sample.style.background]);
  expect(row().textContent).toContain('for 2 touches');
  screen.leave();
  const none = shown(<PuddleRow mixes={[]} familyName={familyName} />);
  expect(page.getByTestId('puddle-row').query()).toBeNull();
  none.leave();
});
