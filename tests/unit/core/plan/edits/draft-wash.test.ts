import { describe, expect, test } from 'vitest';
import { longestPrompt } from '../../../../../app/core/limits.ts';
import { draftWash } from '../../../../../app/core/plan/edits/draft-wash.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import type { WashWork } from '../../../../../app/core/plan/steps/draft-steps.ts';
import { passageOrder } from '../../../../../app/core/plan/steps/passage-order.ts';
import { washStep } from '../../../../../app/core/plan/steps/wash-step.ts';
import { madeFacts } from '../../../../support/plan/made-work.ts';
import { told } from '../../../../support/plan/told.ts';

// Words of changed washes are this project's own (see app/core/plan/edits/draft-wash.ts).

/** Four values of three colours: dull green, brown, blue; the second wash leaves the lightest out. */
const facts = madeFacts({
  slots: [
    { lightness: 85, band: 1, family: 1 },
    { lightness: 70, band: 2, family: 2 },
    { lightness: 45, band: 3, family: 3 },
    { lightness: 25, band: 4, family: 2 },
  ],
  washes: {
    sheet: [
      [0, 1, 2, 3],
      [1, 2, 3],
      [2, 3],
    ],
  },
});

function workOf(own: PlanFacts, n: number, changed: Partial<WashWork> = {}, passage = 'sheet') {
  const wash = own.passages.find((one) => one.passage === passage)?.washes[n - 1];
  if (!wash) throw new Error('no such wash');
  const key = `wash/${passage}/${n}`;
  return { kind: 'wash', key, passage, wash, technique: 'wet on dry', ...changed } as const;
}

const drafted = (n: number, changed: Partial<WashWork> = {}) =>
  told(draftWash(facts, passageOrder(facts), workOf(facts, n, changed)));

describe('a wash as planned', () => {
  test.each([1, 2, 3])('%i has the words of its step, and counts among all of its passage', (n) => {
    const work = workOf(facts, n);
    expect(drafted(n)).toEqual(told(washStep(facts, work, 3)));
  });

  test('the third of three is that of the darks', () => {
    expect([1, 2, 3].map((n) => drafted(n).title)).toEqual(['First wash', 'Second wash', 'Darks']);
  });

  test('dry brush names the values it drags over, each once', () => {
    const { title, prompt, watch } = drafted(2, { technique: 'dry brush' });
    expect(title).toBe('Second wash');
    expect(prompt).toBe(
      'Blot the loaded brush, hold it low and drag it over the light, mid and dark shapes: only the tops of the paper take paint.',
    );
    expect(watch).toBe('Stop before the grain fills. Then leave it alone.');
  });
});

describe('a wash she changed', () => {
  test('keeps the key it is given, and what it is painted with', () => {
    const step = drafted(2, { key: 'wash/sheet/2/second', change: 'second go' });
    expect(step.key).toBe('wash/sheet/2/second');
    expect(step).toMatchObject({ kind: 'wash', slots: [1, 2, 3], families: [2, 3] });
  });

  test.each(['first go', 'second go'] as const)('%s: what to paint by its colours', (change) => {
    const go = (technique: WashWork['technique']) => drafted(2, { change, technique });
    expect(go('wet on dry')).toMatchObject({
      title: `Second wash, ${change}`,
      prompt:
        'Paint only the brown and blue shapes in one go, and stop at the border of the others.',
    });
    expect(go('glaze')).toMatchObject({
      title: `Second wash, a glaze, ${change}`,
      prompt: 'One thin pass over the brown and blue shapes only. Do not scrub.',
    });
    expect(go('wet-in-wet').prompt).toBe(
      'Wet only the brown and blue shapes. At an even sheen lay the colours in, up to their borders.',
    );
    expect(go('dry brush').prompt).toBe(
      'Blot the loaded brush, hold it low and drag it over the brown and blue shapes: only the tops of the paper take paint.',
    );
  });

  test('two in one go: the lighter first, the darker into them', () => {
    const both = (technique: WashWork['technique']) =>
      drafted(1, { change: 'in one go', technique });
    expect(both('wet on dry')).toMatchObject({
      title: 'First wash and the next in one go',
      prompt:
        'Paint the lighter shapes, and while they still shine the darker ones into them, thicker.',
    });
    expect(both('wet-in-wet').prompt).toBe(
      'Wet all these shapes. At an even sheen lay in the lighter colours, then at once the darker ones, thicker, where they belong.',
    );
  });

  test('once more: its colours in the title, one pass without scrubbing', () => {
    const again = (technique: WashWork['technique']) =>
      drafted(3, { change: 'once more', technique });
    expect(again('glaze')).toMatchObject({
      title: 'Once more: blue and brown',
      prompt:
        'Lay the same colour once more over the blue and brown shapes: one pass, no scrubbing.',
    });
    expect(again('wet-in-wet').prompt).toBe(
      'Wet the blue and brown shapes gently once more. At an even sheen lay the same colour over them.',
    );
  });
});

describe('where names are long', () => {
  /** Two colours whose names together have so many signs, ' and ' apart. */
  const named = (signs: number): PlanFacts => {
    const families = facts.reading.families.map((family) => ({
      ...family,
      name: family.id === 2 ? 'b'.repeat(signs - 4) : 'blue',
    }));
    return { ...facts, reading: { ...facts.reading, families } };
  };
  const changed = (own: PlanFacts, change: WashWork['change']) =>
    told(draftWash(own, passageOrder(own), workOf(own, 3, { ...(change && { change }) })));

  test('a title of 40 signs stays, one of 41 loses its colours', () => {
    const frame = 'Once more: '.length + ' and '.length;
    expect(changed(named(40 - frame), 'once more').title).toHaveLength(40);
    expect(changed(named(41 - frame), 'once more').title).toBe('Once more');
  });

  test('a prompt as long as may be stays, a longer one says marked shapes', () => {
    const frame = changed(named(20), 'first go').prompt.length - 20;
    const longest = changed(named(longestPrompt - frame), 'first go').prompt;
    expect(longest).toHaveLength(longestPrompt);
    expect(longest).toMatch(/^Paint only the blue and b+ shapes /);
    expect(changed(named(longestPrompt - frame + 1), 'first go').prompt).toBe(
      'Paint only the marked shapes in one go, and stop at the border of the others.',
    );
  });
});

describe('on a sheet in passages', () => {
  // The subject is the lighter: it is painted first, the darker ground is cut round it.
  const parted = madeFacts({
    slots: [
      { lightness: 80, band: 2, family: 1, passage: 'subject' },
      { lightness: 60, band: 3, family: 1, passage: 'subject' },
      { lightness: 40, band: 3, family: 2, passage: 'ground' },
      { lightness: 20, band: 4, family: 2, passage: 'ground' },
    ],
    washes: { ground: [[2, 3], [3]], subject: [[0, 1], [1]] },
  });
  const order = passageOrder(parted);
  const step = (passage: string, n: number, changed: Partial<WashWork> = {}) =>
    told(draftWash(parted, order, workOf(parted, n, changed, passage)));

  test('each passage counts its own washes; the line is told at the first of each', () => {
    expect(order.passages.map(({ passage }) => passage)).toEqual(['subject', 'ground']);
    expect(step('subject', 1).title).toBe('Subject: First wash');
    expect(step('ground', 2).title).toBe('Background: Darks');
    expect(step('subject', 1).watch).toMatch(/^Subject first/);
    expect(step('ground', 1).watch).toMatch(/^The subject must be bone dry along the line\./);
    for (const passage of ['subject', 'ground'])
      expect(step(passage, 2).watch).toBe(
        'Once the shine goes, leave it alone until it is dry. Its edges stay as the brush leaves them, crisp.',
      );
  });

  test('only what is painted second is cut round the first', () => {
    const isCut = (passage: string) => step(passage, 1).rules.includes('R20');
    expect(['subject', 'ground'].map(isCut)).toEqual([false, true]);
  });

  test('a go of two keeps what is told at the line', () => {
    const go = step('ground', 1, { change: 'first go' });
    expect(go.title).toBe('Background: First wash, first go');
    expect(go.watch).toMatch(/^The subject must be bone dry along the line\./);
  });
});
