import { describe, expect, test } from 'vitest';
import type { DryingModel } from '../../../../app/core/drying/estimate-drying.ts';
import type { Lesson } from '../../../../app/core/drying/learn-pace.ts';
import { usualPaper } from '../../../../app/core/drying/paper-choice.ts';
import { roomWeather } from '../../../../app/core/drying/weather.ts';
import { type DryingClock, startClock } from '../../../../app/core/session/drying-clock.ts';
import { freshState, type SessionState } from '../../../../app/core/session/session-state.ts';
import {
  changeCircumstances,
  noteOnClock,
  stillWet,
  takeBackDry,
} from '../../../../app/core/session/watch-paper.ts';
import { minute } from '../../../support/session/session-log.ts';
import { washSteps } from '../../../support/session/wash-steps.ts';

/** Any wash loses its shine in 2 to 8 minutes, likely 4, and dries in 20 to 80, likely 40; as slow again in damp air. */
const model: DryingModel = ({ weather }) => {
  const slow = weather.humidity > 80 ? 2 : 1;
  return { shineMinutes: [2 * slow, 8 * slow], dryMinutes: [20 * slow, 80 * slow] };
};
const damp = { ...roomWeather, humidity: 85 };
const [key, other] = ['wash/ground/1', 'wash/subject/1'];

const at = (minutes: number, changed: Partial<SessionState> = {}): SessionState => ({
  ...freshState,
  atMs: minutes * minute,
  ...changed,
});
const clockOf = (step: string, changed: Partial<DryingClock> = {}): DryingClock => {
  const found = washSteps.find((each) => each.key === step);
  if (!found) throw new Error('no such step');
  return { ...startClock(found, 0, freshState, model), ...changed };
};
const tap = (clock: 'shine' | 'dry', ratio: number, from: string): Lesson => ({
  kind: 'tap',
  clock,
  paper: usualPaper,
  wash: 'wash',
  ratio,
  from,
});

// Limits and figures are (own): the docstrings of what is tested say why.
describe('what she saw', () => {
  test('is noted on the clock of its wash and taught: six minutes of likely four are 1.5', () => {
    const [mine, another] = [clockOf(key), clockOf(other)];
    const seen = noteOnClock(at(6, { clocks: [mine, another] }), washSteps, key, 'shine');
    expect(seen.clocks).toEqual([another, { ...mine, shineGoneMs: 6 * minute }]);
    expect(seen.lessons).toEqual([tap('shine', 1.5, `${key} ${6 * minute}`)]);
    const dry = noteOnClock({ ...seen, atMs: 60 * minute }, washSteps, key, 'dry');
    expect(dry.clocks.at(-1)).toMatchObject({ key, shineGoneMs: 6 * minute, dryMs: 60 * minute });
    expect(dry.lessons).toEqual([...seen.lessons, tap('dry', 1.5, `${key} ${60 * minute}`)]);
  });

  test('said again changes nothing', () => {
    const state = at(9, { clocks: [clockOf(key, { shineGoneMs: 6 * minute })] });
    expect(noteOnClock(state, washSteps, key, 'shine')).toBe(state);
  });

  test('is noted and teaches nothing where it can not be believed: half a minute of four', () => {
    const seen = noteOnClock(at(0.5, { clocks: [clockOf(key)] }), washSteps, key, 'shine');
    expect(seen.clocks[0]?.shineGoneMs).toBe(0.5 * minute);
    expect(seen.lessons).toEqual([]);
  });

  test('at a step without a wet wash of its own is about what dries last', () => {
    const [mine, another] = [clockOf(key), clockOf(other)];
    const state = at(6, { clocks: [mine, another], timer: another });
    expect(noteOnClock(state, washSteps, 'dry/ground/1', 'shine').clocks).toEqual([
      mine,
      { ...another, shineGoneMs: 6 * minute },
    ]);
    // Its own wash is dry already: the same.
    const dried = { ...state, clocks: [{ ...mine, dryMs: minute }, another] };
    expect(noteOnClock(dried, washSteps, key, 'shine').clocks.at(-1)).toMatchObject({
      key: other,
      shineGoneMs: 6 * minute,
    });
  });

  test('with nothing wet is not noted', () => {
    const state = at(6);
    expect(noteOnClock(state, washSteps, key, 'dry')).toBe(state);
  });

  test('of a wash the model does not know is noted and not taught', () => {
    const [plain] = washSteps;
    const unknown = [{ ...plain, key, kind: 'wash' as const, technique: 'none' as const }];
    const seen = noteOnClock(at(6, { clocks: [clockOf(key)] }), unknown as never, key, 'shine');
    expect([seen.clocks[0]?.shineGoneMs, seen.lessons]).toEqual([6 * minute, []]);
    const noCourse = at(6, { clocks: [clockOf(key, { course: null })] });
    expect(noteOnClock(noCourse, washSteps, key, 'shine').lessons).toEqual([]);
  });
});

describe("'it is dry' taken back", () => {
  const said = 50 * minute;
  const lessons: readonly Lesson[] = [
    tap('dry', 1.2, `${key} ${said}`), // what is to go
    tap('shine', 1.5, `${key} ${said}`), // the other clock
    tap('dry', 0.9, `${other} ${said}`), // another wash
    tap('dry', 0.8, `${key} ${40 * minute}`), // the same wash, another time
    { kind: 'forget', clock: 'dry', paper: usualPaper, wash: 'wash' },
  ];

  test('its lesson goes, all others stay, and the clock runs on', () => {
    const clock = clockOf(key, { dryMs: said });
    const back = takeBackDry(at(55, { clocks: [clock], lessons }), key);
    expect(back.clocks).toEqual([{ ...clock, dryMs: null }]);
    expect(back.lessons).toEqual(lessons.slice(1));
  });

  test('that was not said stays unsaid', () => {
    const state = at(55, { clocks: [clockOf(key)], lessons });
    expect(takeBackDry(state, key)).toBe(state);
    expect(takeBackDry(state, other)).toBe(state);
  });
});

describe('still wet', () => {
  // Dry in 20 to 80 minutes by the plan: a third of 80 is added, the next look is due at half of that.
  const third = (80 * minute) / 3;

  test('the wait is longer by a third of the planned end, the next look at half of that', () => {
    const state = at(70, { phase: 'ready', clocks: [clockOf(key)] });
    const longer = stillWet(state, key);
    expect(longer.phase).toBe('drying');
    expect(longer.clocks[0]?.endsLowMs).toBeCloseTo(70 * minute + third / 2, 3);
    expect(longer.clocks[0]?.endsHighMs).toBeCloseTo(80 * minute + third, 3);
    const late = stillWet({ ...state, atMs: 100 * minute, phase: 'painting' }, key);
    expect(late.phase).toBe('painting');
    expect(late.clocks[0]?.endsHighMs).toBeCloseTo(100 * minute + third, 3);
  });

  test('of what she had called dry: the last wash down is meant, and its lesson goes', () => {
    const clocks = [clockOf(key, { dryMs: minute }), clockOf(other, { dryMs: 2 * minute })];
    const lessons = [tap('dry', 1, `${key} ${minute}`), tap('dry', 1, `${other} ${2 * minute}`)];
    const wet = stillWet(at(90, { clocks, lessons }), 'dry/subject/1');
    expect(wet.clocks.map((clock) => [clock.key, clock.dryMs])).toEqual([
      [key, minute],
      [other, null],
    ]);
    expect(wet.lessons).toEqual(lessons.slice(0, 1));
  });

  test('where the plan put nothing wet down: five to fifteen minutes from now', () => {
    const wet = stillWet(at(3), 'last-look');
    expect(wet.clocks).toMatchObject([
      { key: 'last-look', startedMs: 3 * minute, endsLowMs: 8 * minute, endsHighMs: 18 * minute },
    ]);
  });
});

describe('other air', () => {
  const inDampAir = (state: SessionState) =>
    changeCircumstances(state, washSteps, { weather: damp }, model);

  test('what is left of every wait is stretched, what has gone by counts as it went', () => {
    const after = inDampAir(at(10, { clocks: [clockOf(key)] }));
    expect(after.weather).toEqual(damp);
    // Of 20 and 80 minutes 10 and 70 were left: 20 and 140 now. The shine's time was over.
    expect(after.clocks).toMatchObject([
      {
        shineLowMs: 2 * minute,
        shineHighMs: 8 * minute,
        endsLowMs: 30 * minute,
        endsHighMs: 150 * minute,
        course: { sinceMs: 10 * minute, model: { shine: 8, dry: 80 } },
      },
    ]);
    // Likely 4 and 40 minutes, ten of them gone.
    expect(after.clocks[0]?.course?.shineGone).toBeCloseTo(2.5, 12);
    expect(after.clocks[0]?.course?.dryGone).toBeCloseTo(0.25, 12);
    // At the new rate half of a likely time more by 50 minutes: 0.25 + 40 / 80.
    const again = inDampAir({ ...after, atMs: 50 * minute });
    expect(again.clocks[0]?.course?.dryGone).toBeCloseTo(0.75, 12);
    expect(again.clocks[0]?.endsHighMs).toBe(150 * minute);
  });

  test('within the shine its clock is stretched too', () => {
    const [clock] = inDampAir(at(4, { clocks: [clockOf(key)] })).clocks;
    expect([clock?.shineLowMs, clock?.shineHighMs]).toEqual([2 * minute, 12 * minute]);
  });

  test('a range never turns round: an end once put off stays behind the beginning', () => {
    const [clock] = changeCircumstances(
      at(10, { clocks: [clockOf(key, { endsLowMs: 70 * minute })] }),
      washSteps,
      { weather: damp },
      // Twice as long at the low end, no longer at the high one.
      (conditions) => ({
        ...model(conditions),
        dryMinutes: conditions.weather.humidity > 80 ? [40, 80] : [20, 80],
      }),
    ).clocks;
    expect([clock?.endsLowMs, clock?.endsHighMs]).toEqual([130 * minute, 130 * minute]);
  });

  test('what is dry, what no step put down and what the model does not know stay as they are', () => {
    const clocks = [
      clockOf(key, { dryMs: 9 * minute }),
      { ...clockOf(other), key: 'a step of another plan' },
    ];
    expect(inDampAir(at(10, { clocks })).clocks).toEqual(clocks);
    const [clock] = inDampAir(at(10, { clocks: [clockOf(other, { course: null })] })).clocks;
    expect(clock?.course).toBeNull();
  });

  test('a wash without a shine begins its progress at nothing', () => {
    const dull: DryingModel = () => ({ shineMinutes: [0, 0], dryMinutes: [20, 80] });
    const step = washSteps[0];
    if (!step) throw new Error('no step');
    const clock = startClock(step, 0, freshState, dull);
    const [after] = changeCircumstances(
      at(10, { clocks: [clock] }),
      washSteps,
      { weather: damp },
      dull,
    ).clocks;
    expect(after).toMatchObject({
      shineLowMs: 0,
      shineHighMs: 0,
      course: { shineGone: 0, dryGone: 0.25 },
    });
  });

  test('another paper counts from now on', () => {
    const paper = { gsm: 190, fibre: 'cellulose' } as const;
    const heavy: DryingModel = (conditions) => ({
      ...model(conditions),
      dryMinutes: conditions.paperGsm < 200 ? [10, 40] : [20, 80],
    });
    const after = changeCircumstances(
      at(10, { clocks: [clockOf(key)] }),
      washSteps,
      { paper },
      heavy,
    );
    expect(after.paper).toEqual(paper);
    expect(after.weather).toEqual(roomWeather);
    expect(after.clocks).toMatchObject([{ endsLowMs: 15 * minute, endsHighMs: 45 * minute }]);
  });
});
