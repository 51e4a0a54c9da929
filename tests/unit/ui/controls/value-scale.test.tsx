import { afterEach, expect, test } from 'vitest';
import { cssGrey } from '../../../../app/core/colour/lab.ts';
import { ValueScale } from '../../../../app/ui/controls/value-scale.tsx';
import { drawBare } from '../../../support/ui/bare-page.ts';

// Munsell values 0 to 10 in ten squares: common practice, no source. Bands are made here.
const bands = [
  { band: 1, from: 70, to: 100, value: 8.52 },
  { band: 2, from: 60, to: 70, value: 6.4 },
  { band: 3, from: 0, to: 60, value: 3 },
];
let drawn: ReturnType<typeof drawBare>;
afterEach(() => drawn.leave());
const styleOf = (element: object): Record<string, unknown> => ({
  ...(element as { style: Record<string, unknown> }).style,
});

test('ten squares from black to white, each in the grey of its middle', () => {
  drawn = drawBare(<ValueScale />);
  const greys = drawn.body.all('span').map((span) => styleOf(span).background);
  expect(greys.slice(0, 10)).toEqual([5, 15, 25, 35, 45, 55, 65, 75, 85, 95].map(cssGrey));
  expect(drawn.body.words).toBe('0 blackvalue10 white');
});

test('bands lie under it from dark to light, as wide as they reach and never too narrow to touch', () => {
  const asked: number[] = [];
  drawn = drawBare(
    <ValueScale
      bands={bands}
      done={new Set([3])}
      current={new Set([2])}
      onBand={(n) => asked.push(n)}
    />,
  );
  const buttons = drawn.body.all('button');
  expect(buttons.map((button) => Number(styleOf(button).flexGrow))).toEqual([60, 14, 30]);
  expect(buttons.map((button) => button.getAttribute('data-done'))).toEqual(['true', null, null]);
  expect(buttons.map((button) => button.getAttribute('data-current'))).toEqual([
    null,
    'true',
    null,
  ]);
  expect(buttons.map((button) => button.getAttribute('aria-pressed'))).toEqual([
    'false',
    'true',
    'false',
  ]);
  expect(buttons[2]?.getAttribute('aria-label')).toMatch(/, value 8\.5$/);
  for (const button of buttons) button.tell('click');
  expect(asked).toEqual([3, 2, 1]);
});

test('without numbers a band is only named; bands that are only shown are no buttons', () => {
  drawn = drawBare(<ValueScale bands={bands} numbers={false} onBand={() => {}} />);
  expect(drawn.body.all('button')[0]?.getAttribute('aria-label')).not.toMatch(/value/);
  drawn.leave();
  drawn = drawBare(<ValueScale bands={bands} />);
  expect(drawn.body.all('button')).toEqual([]);
});
