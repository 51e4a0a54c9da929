import { expect, test } from 'vitest';
import { foldSession } from '../../../../app/model/session/fold-session.ts';
import { promptNow } from '../../../../app/model/session/prompt-now.ts';
import { easelTime } from '../../../../app/model/session/time-left.ts';
import { device, minute } from './session-log.ts';
import { washSteps } from './wash-steps.ts';

const drying = () => {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'wash/ground/1' });
  it.wait(minute);
  it.log({ kind: 'step-done', key: 'wash/ground/1' });
  return it;
};
const prompt = (it: ReturnType<typeof device>): string => {
  const state = foldSession(washSteps, it.events);
  const step = { kind: washSteps[state.stepIndex]?.kind ?? 'dry', prompt: 'as planned' };
  return promptNow(step, state, easelTime(state, washSteps, it.now()));
};

test('while it shines: what to wait for; once the shine is gone: leave it', () => {
  const it = drying();
  expect(prompt(it)).toMatch(/^Leave it alone until no shine shows/);
  it.wait(minute);
  it.log({ kind: 'shine-gone', key: 'dry/ground/1' });
  expect(prompt(it)).toMatch(/^Shine gone, still cool: leave it\./);
});

test('untold, when the shine must be over, it says so too', () => {
  const it = drying();
  it.wait(40 * minute);
  expect(prompt(it)).toMatch(/^The shine should be gone.*leave it\./);
});

test('in damp air it does not ask for the back of the hand', () => {
  const it = drying();
  it.log({ kind: 'weather', weather: { celsius: 20, humidity: 90, airSpeed: 0.15 } });
  expect(prompt(it)).toMatch(/pale as a dry scrap.*the hand tells nothing/);
});

test('every other step says what the plan says', () => {
  const it = device();
  it.log({ kind: 'started' });
  expect(prompt(it)).toBe('as planned');
});
