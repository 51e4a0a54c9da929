import { expect, test } from 'vitest';
import { roomWeather } from '../../../../../app/core/drying/weather.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import { paperFixing } from '../../../../../app/core/plan/steps/preparation-steps.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';
import { told } from '../../../../support/plan/told.ts';

// Plans are made here: on a busy machine some seconds each.
const cotton = (gsm: number) => ({ gsm, fibre: 'cotton' }) as const;

// 190 g/m2 must be stretched for wet-in-wet, 300 is taped, 640 lies as it is: common practice, no source.
test.each([
  [190, 150, /^Stretch/],
  [190, 60, /^Tape the sheet to a board on all sides/],
  [300, 150, /^Fix .* gummed tape or staples/],
  [300, 60, /^Tape or clip/],
  [640, 150, /as it is/],
])('%s g/m2 with %s g/m2 of water', (gsm, water, how) => {
  const fixing = paperFixing(cotton(gsm), roomWeather, water);
  expect(words({ say: 'prepare/sheet', hold: fixing.hold })).toMatch(how);
  expect(fixing.minutes[1]).toBeGreaterThan(fixing.minutes[0]);
});

test('a block and a soaked sheet are held otherwise', () => {
  const on = (backing: 'block' | 'wet') =>
    paperFixing(cotton(190), { ...roomWeather, backing }, 150).hold;
  expect(on('block')).toBe('on its block');
  expect(on('wet')).toBe('soaked');
});

test('the plan says it first, for the wettest wash it has', async () => {
  const hills = tableOf([97, 74, 40], [[-10, 20]]);
  const soft = [{ a: 0, b: 1, lengthMm: 300, soft: 0.9 }];
  const first = async (reading: Parameters<typeof buildPlan>[0]) =>
    told(
      await buildPlan(
        reading,
        { chosen: ['pb29-ultramarine-blue', 'pbr7-burnt-sienna'], paper: cotton(190) },
        noCheckpoint,
      ),
    ).steps[0];
  expect(await first(madeReading(hills))).toMatchObject({
    kind: 'prepare',
    prompt: expect.stringMatching(/^Tape/),
  });
  const wet = await first(madeReading(hills, soft));
  expect(wet?.prompt).toMatch(/^Stretch/);
  expect(wet?.watch).toMatch(/Low-tack/);
  expect(wet?.prompt.length).toBeLessThanOrEqual(190);
});
