import { afterEach, expect, test } from 'vitest';
import type { SmallTechnique } from '../../../app/core/plan/plan.ts';
import { words } from '../../../app/core/words/plan/words.ts';
import { ToolLine, TouchList } from '../../../app/ui/mixes/step-parts.tsx';
import { type Shown, shown } from './shown.ts';

const merging: SmallTechnique = {
  technique: 'merging',
  text: 'Let these merge, painted in one go: the blue and the ochre.',
  paper: 'shiny',
  minutes: [0, 12],
};
const dryBrush: SmallTechnique = {
  technique: 'dry brush',
  text: 'Drag it over the brown.',
  paper: 'bone dry',
  minutes: null,
};
let screen: Shown | null = null;
afterEach(() => screen?.leave());

test('each technique with its sign and its minutes, then the brush and how the board lies', () => {
  screen = shown(
    <TouchList
      step={{
        touches: [merging, dryBrush],
        brush: 'a round 12',
        board: 'flat',
        shineMinutes: [3, 12],
      }}
    />,
  );
  const rows = [...screen.host.querySelectorAll('li')].map((row) => row.textContent);
  expect(rows).toEqual([
    `Merging, while it shines; the shine goes in 3–\u206012 min. ${words(merging.text)}`,
    `Dry brush, on bone dry paper. ${words(dryBrush.text)}`,
  ]);
  const tools = [...screen.host.querySelectorAll('p')].map((line) => line.textContent);
  expect(tools).toEqual(['Brush: a round 12.', 'Board: flat.']);
});

test('one line of tools at the easel, no list without techniques, nothing without anything', () => {
  const tools = { brush: 'a round 12', board: 'flat', shineMinutes: [0, 0] } as const;
  screen = shown(
    <>
      <ToolLine step={tools} />
      <TouchList step={tools} techniquesOnly />
    </>,
  );
  expect(screen.host.querySelector('ul')).toBeNull();
  expect(screen.host.textContent).toBe('Brush: a round 12. Board: flat.');
  screen.leave();
  screen = shown(<TouchList step={{ shineMinutes: [0, 0] }} />);
  expect(screen.host.textContent).toBe('');
});

test('a wash in two ways says brush and board of each area', () => {
  const areas = [
    {
      name: 'the blue at the top',
      slots: [0],
      technique: 'wet-in-wet',
      paper: 'shiny',
      brush: 'a mop',
      board: 'flat',
    },
    {
      name: 'the rest',
      slots: [1],
      technique: 'wet on dry',
      paper: 'bone dry',
      brush: 'a round 12',
    },
  ] as const;
  screen = shown(<ToolLine step={{ areas, brush: 'a mop; a round 12', board: 'flat' }} />);
  expect(screen.host.textContent).toBe(
    'On wetted paper the blue at the top: a mop; board flat. On dry paper the rest: a round 12.',
  );
});
