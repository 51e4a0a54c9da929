import { expect, test } from 'vitest';
import {
  type Cue,
  cautionsDue,
  chooseCue,
  choosePrompt,
  nextCall,
  timesCalled,
} from '../../../../app/core/session/choose-cue.ts';
import { easelTime } from '../../../../app/core/session/easel-time.ts';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import { words } from '../../../../app/core/words/plan/words.ts';
import { device, minute, steps } from '../../../support/session/session-log.ts';
import { washSteps } from '../../../support/session/wash-steps.ts';

const mask = 'Most masking fluid holds latex and ammonia: open a window.';
const cobalt = 'Cobalt blue: out of the mouth.';
const carefulSteps = (
  [
    ['prepare', []],
    ['puddles', [cobalt]],
    ['mask', [mask]],
    ['wash', [cobalt]],
    ['dry', []],
    ['unmask', [mask]],
    ['wash', [cobalt]],
    ['dry', ['Hair dryer: as a plan said that was made for one.']],
  ] as const
).map(([kind, cautions]) => ({ kind, cautions }));
const due = (index: number, hairDryer = false) =>
  cautionsDue(carefulSteps, index, { hairDryer }).map(words);

// Limits and figures are (own): the docstrings of what is tested say why.
test('a hazard is told at every step where it recurs', () => {
  expect([1, 3, 6].map((index) => due(index))).toEqual([[cobalt], [cobalt], [cobalt]]);
  expect([2, 5].map((index) => due(index))).toEqual([[mask], [mask]]);
});

test('of a dryer at each drying check, where she has one, and not while the mask is on', () => {
  expect([due(4), due(7)]).toEqual([[], []]);
  expect(due(4, true)).toEqual([expect.stringMatching(/^No hair dryer yet: the mask/)]);
  expect(due(7, true)).toEqual([
    expect.stringMatching(/cool setting, never a hot-air gun.*water jar and wet hands/),
  ]);
  expect(due(6, true)).toEqual([cobalt]);
});

test('past the last step nothing is said', () => {
  expect(due(99, true)).toEqual([]);
});

const spoken = steps.map((step) => ({ ...step, prompt: `Now: ${step.key}.` }));
type Device = ReturnType<typeof device>;

function cue(it: Device): Cue | null {
  const state = foldSession(steps, it.events);
  return chooseCue(state, spoken, easelTime(state, steps, it.now()));
}

/** First wash down: shine 3 to 6 min, dry 30 to 60 min. */
function drying(): Device {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'wash 1' });
  it.wait(10 * minute);
  it.log({ kind: 'step-done', key: 'wash 1' });
  return it;
}

/** Every cue heard while time goes by in steps of ten seconds. */
function heard(it: Device, minutes: number): Cue[] {
  const all: Cue[] = [];
  for (let gone = 0; gone <= minutes * 6; gone++) {
    const now = cue(it);
    if (now && now.key !== all.at(-1)?.key) all.push(now);
    it.wait(minute / 6);
  }
  return all;
}

test('a timer calls at its low end, then after each half of its range, four times at most', () => {
  const at = (minutes: number) => timesCalled(30 * minute, 60 * minute, minutes * minute);
  expect([0, 29.9, 30, 44.9, 45, 60, 75, 300].map(at)).toEqual([0, 0, 1, 1, 2, 3, 4, 4]);
  expect(timesCalled(minute, minute, minute * 1.5)).toBe(1); // no range: still a minute between
  expect(timesCalled(minute, minute, minute * 2.1)).toBe(2);
});

test('a whole wait: the step, the shine in three windows, the end, then louder', () => {
  const all = heard(drying(), 200);
  expect(all.map(({ kind, louder }) => `${kind} ${louder}`)).toEqual([
    'step 0',
    'shine 0',
    'shine 0',
    'shine 0',
    'end 0',
    'end 1',
    'end 2',
    'end 3',
  ]);
  expect(words(all[0]?.says)).toBe('Now: dry 1.');
  expect(words(all[3]?.says)).toMatch(/leave it alone/i);
  expect(words(all[4]?.says)).toMatch(/coolness on the back of the hand/);
});

test('a shine she has seen go is spoken of no more', () => {
  const it = drying();
  it.wait(2 * minute);
  it.log({ kind: 'shine-gone', key: 'dry 1' });
  expect(heard(it, 25).map(({ kind }) => kind)).toEqual(['step']);
});

test('still wet: the wait is longer and calls anew', () => {
  const it = drying();
  it.wait(31 * minute);
  const first = cue(it);
  it.log({ kind: 'still-wet', key: 'dry 1' });
  const after = heard(it, 60);
  expect(first?.kind).toBe('end');
  expect(after.find(({ kind }) => kind === 'end')).toMatchObject({ louder: 0 });
  expect(after.some(({ key }) => key === first?.key)).toBe(false);
});

test('A-TIM-13: a step that was left calls no more; a pause is silent', () => {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'wash 1' });
  it.wait(60 * minute);
  expect(cue(it)).toMatchObject({ kind: 'end', key: 'wash 1 painted' });
  it.log({ kind: 'paused' });
  expect(cue(it)).toBeNull();
  it.log({ kind: 'resumed' }, { kind: 'step-done', key: 'wash 1' });
  expect(cue(it)?.key).not.toBe('wash 1 painted');
});

test('nothing calls while she gets ready: there is no clock to a pencil', () => {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'prepare' });
  it.wait(60 * minute);
  expect(cue(it)).toMatchObject({ kind: 'step' });
});

const dryingFirstWash = () => {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'wash/ground/1' });
  it.wait(minute);
  it.log({ kind: 'step-done', key: 'wash/ground/1' });
  return it;
};
const prompt = (it: ReturnType<typeof device>): string => {
  const state = foldSession(washSteps, it.events);
  const step = { kind: washSteps[state.stepIndex]?.kind ?? 'dry', prompt: 'as planned' };
  return words(choosePrompt(step, state, easelTime(state, washSteps, it.now())));
};

test('while it shines: what to wait for; once the shine is gone: leave it', () => {
  const it = dryingFirstWash();
  expect(prompt(it)).toMatch(/^Leave it alone until no shine shows/);
  it.wait(minute);
  it.log({ kind: 'shine-gone', key: 'dry/ground/1' });
  expect(prompt(it)).toMatch(/^Shine gone, still cool: leave it\./);
});

test('untold, when the shine must be over, it says so too', () => {
  const it = dryingFirstWash();
  it.wait(40 * minute);
  expect(prompt(it)).toMatch(/^The shine should be gone.*leave it\./);
});

test('in damp air it does not ask for the back of the hand', () => {
  const it = dryingFirstWash();
  it.log({ kind: 'weather', weather: { celsius: 20, humidity: 90, airSpeed: 0.15 } });
  expect(prompt(it)).toMatch(/pale as a dry scrap.*the hand tells nothing/);
});

test('every other step says what the plan says', () => {
  const it = device();
  it.log({ kind: 'started' });
  expect(prompt(it)).toBe('as planned');
});

test('the next call is the one the clock has not made yet, and as loud as it will be', () => {
  const clock = { endsLowMs: 30 * minute, endsHighMs: 70 * minute };
  expect(nextCall(clock, 10 * minute)).toEqual({ inMs: 20 * minute, louder: 0 });
  expect(nextCall(clock, 30 * minute)).toEqual({ inMs: 20 * minute, louder: 1 });
  expect(nextCall(clock, 89 * minute)).toEqual({ inMs: minute, louder: 3 });
  expect(nextCall(clock, 90 * minute)).toBeNull();
  for (let atMs = 0; atMs < 90 * minute; atMs += minute / 2) {
    const call = nextCall(clock, atMs);
    const after = timesCalled(clock.endsLowMs, clock.endsHighMs, atMs + (call?.inMs ?? 0));
    expect(after).toBe(timesCalled(clock.endsLowMs, clock.endsHighMs, atMs) + 1);
  }
});
