import { describe, expect, it } from 'vitest';
import { roomWeather } from '../../../../app/core/drying/weather.ts';
import { noCheckpoint } from '../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import type { Step, WashPlan } from '../../../../app/core/plan/plan.ts';
import { describeBrokenRules } from '../../../../app/core/plan/rules/check-rules.ts';
import { paintCautions } from '../../../../app/core/plan/steps/step-cautions.ts';
import { type MadeSlot, madeReading, tableOf } from '../../../support/plan/made-reading.ts';

const limits = { washes: 3, puddlesPerWash: 3 };
const box = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
const hills = tableOf(
  [97, 74, 52, 28],
  [
    [-10, 20],
    [2, -18],
  ],
);
const kinds = (plan: WashPlan): string[] => plan.steps.map((step) => step.kind);
const washes = (plan: WashPlan): Step[] => plan.steps.filter((step) => step.kind === 'wash');

describe('steps', () => {
  it('stand in the order of the trade', async () => {
    const plan = await buildPlan(madeReading(hills), { box, washes: 3 }, noCheckpoint);
    expect(kinds(plan)).toEqual([
      'prepare',
      'puddles',
      'transfer',
      'wash',
      'dry',
      'wash',
      'dry',
      'wash',
      'dry',
      'accents',
      'last-look',
    ]);
    expect(plan.steps.map((step) => step.title)).toContain('Darks');
    expect(describeBrokenRules(plan, limits)).toEqual([]);
    for (const step of washes(plan)) {
      expect(step.dryMinutes[1]).toBeGreaterThan(step.shineMinutes[1]);
      expect(step.paintMinutes[0]).toBeGreaterThan(0);
    }
  });

  it('the first wash covers all but the whites, which stay paper to the end', async () => {
    const plan = await buildPlan(madeReading(hills), { box }, noCheckpoint);
    const whites = plan.slots.flatMap((slot, i) => (slot.reserve ? [i] : []));
    expect(whites.length).toBeGreaterThan(0);
    expect(washes(plan)[0]?.slots).toHaveLength(plan.slots.length - whites.length);
    for (const i of whites) expect(plan.steps.at(-1)?.after[i]).toEqual(plan.paper);
    expect(washes(plan)[0]?.prompt).toContain('but the whites');
  });

  it('mostly soft borders ask for wet paper, and small whites then for a mask', async () => {
    const soft = [2, 3].map((b) => ({ a: b - 2, b, lengthMm: 300, soft: 0.9 }));
    const small: MadeSlot[] = hills.map((slot) => ({
      ...slot,
      ...(slot.band === 1 ? { shapes: 12, smallShapes: 9 } : {}),
    }));
    const wet = await buildPlan(madeReading(small, soft), { box }, noCheckpoint);
    expect(washes(wet)[0]?.technique).toBe('wet-in-wet');
    expect(washes(wet)[0]?.paper).toBe('shiny');
    expect(washes(wet)[0]?.soften).toContain('against the white');
    expect(kinds(wet).indexOf('mask')).toBe(3);
    const off = kinds(wet).indexOf('unmask');
    expect(kinds(wet)[off - 1]).toBe('dry');
    expect(describeBrokenRules(wet, limits)).toEqual([]);

    const hard = soft.map((border) => ({ ...border, soft: 0.1 }));
    const dry = await buildPlan(madeReading(small, hard), { box }, noCheckpoint);
    expect(washes(dry)[0]?.technique).toBe('wet on dry');
    expect(kinds(dry)).not.toContain('mask');
  });

  it('splatters broken shapes only, and lifts only what lifts', async () => {
    const broken = hills.map((slot) => ({
      ...slot,
      ...(slot.band === 4 ? { shapes: 120, smallShapes: 100 } : {}),
    }));
    const soft = [{ a: 4, b: 6, lengthMm: 400, soft: 0.9, contrast: 25 }];
    const plan = await buildPlan(
      madeReading(broken, soft),
      // Two washes: a longer plan would leave out what is only showy.
      { chosen: ['pg18-viridian', 'pb74-cobalt-deep', 'pv16-manganese-violet'], washes: 2 },
      noCheckpoint,
    );
    const splatter = plan.steps.find((step) => step.kind === 'splatter');
    expect(splatter?.slots.every((i) => plan.slots[i]?.band === 4)).toBe(true);
    expect(plan.steps.find((step) => step.kind === 'lift')?.slots).toEqual([6]);
    expect(describeBrokenRules(plan, limits)).toEqual([]);

    const staining = await buildPlan(
      madeReading(broken, soft),
      { chosen: ['pb27-prussian-blue', 'pr122-quinacridone-magenta'] },
      noCheckpoint,
    );
    expect(kinds(staining)).not.toContain('lift');
  });

  it('takes each passage through its own washes', async () => {
    const two: MadeSlot[] = [
      ...hills.map((slot) => ({ ...slot, share: slot.share / 2, passage: 'ground' })),
      ...hills.map((slot) => ({ ...slot, share: slot.share / 2, passage: 'subject' })),
    ];
    const plan = await buildPlan(madeReading(two), { box, washes: 3 }, noCheckpoint);
    expect(washes(plan).map((step) => step.key)).toEqual(
      ['ground', 'subject'].flatMap((name) => [1, 2, 3].map((n) => `wash/${name}/${n}`)),
    );
    expect(washes(plan)[0]?.title).toBe('Background: First wash');
    expect(describeBrokenRules(plan, limits)).toEqual([]);
  });

  it('says what a paint asks for, and of a dryer where there is one', async () => {
    const chosen = ['pr108-cadmium-red', 'pb29-ultramarine-blue'];
    const plan = await buildPlan(madeReading(hills), { chosen }, noCheckpoint);
    const puddles = plan.steps.find((step) => step.kind === 'puddles');
    expect(puddles?.cautions.join()).toMatch(
      /Cadmium red: out of the mouth; no sanding, scraping, spraying or splattering\./,
    );
    expect(paintCautions(plan)).toEqual([
      expect.stringMatching(/^Cadmium red contains cadmium and selenium: poison/),
    ]);
    const dryOf = (one: WashPlan) => one.steps.find((step) => step.kind === 'dry')?.cautions;
    expect(dryOf(plan)).toEqual([]);
    const weather = { ...roomWeather, hairDryer: true };
    const blown = await buildPlan(madeReading(hills), { chosen, weather }, noCheckpoint);
    expect(dryOf(blown)?.join()).toMatch(/dryer.*cool setting.*water jar/);
  });

  it('dries longer in damp air', async () => {
    const wet = { celsius: 15, humidity: 90, airSpeed: 0.1 };
    const damp = await buildPlan(madeReading(hills), { box, weather: wet }, noCheckpoint);
    const room = await buildPlan(madeReading(hills), { box }, noCheckpoint);
    const dryOf = (plan: WashPlan): number => washes(plan)[0]?.dryMinutes[0] ?? 0;
    expect(dryOf(damp)).toBeGreaterThan(dryOf(room));
    expect(damp.steps.find((step) => step.kind === 'dry')?.prompt).toMatch(/tells nothing/);
  });

  it('says what each paint is for in a few words', async () => {
    const plan = await buildPlan(madeReading(hills), { box }, noCheckpoint);
    for (const entry of plan.palette) expect(entry.why.split(' ').length).toBeLessThan(9);
    expect(plan.palette.map((entry) => entry.why)).toContain('the deepest darks');
  });
});

describe('warnings', () => {
  it('name the darks that are out of reach, and by how much', async () => {
    const chosen = ['pr254-pyrrole-red', 'py74-arylide-yellow'];
    const plan = await buildPlan(madeReading(hills), { chosen }, noCheckpoint);
    const warning = plan.warnings.find(({ code }) => code === 'dark-out-of-reach');
    expect(warning?.text).toMatch(/\d\.\d too light/);
    expect(plan.steps.length).toBeGreaterThan(0);
  });

  it('say the same where a paint never leaves the white of the paper', async () => {
    const greys = madeReading(tableOf([97, 74, 52, 28], [[0, 0]]));
    const plan = await buildPlan(greys, { chosen: ['pw4-zinc-white'] }, noCheckpoint);
    expect(plan.steps).toEqual([]);
    expect(plan.warnings.map(({ code }) => code)).toEqual(['dark-out-of-reach']);
  });

  it('name the colours a poor palette misses', async () => {
    const chosen = ['pb27-prussian-blue', 'pbk9-bone-black'];
    const reds = madeReading(tableOf([95, 70, 45], [[45, 30]]));
    const plan = await buildPlan(reds, { chosen }, noCheckpoint);
    expect(plan.warnings.map(({ code }) => code)).toContain('colour-out-of-reach');
  });

  it('say so where everything is white', async () => {
    const plan = await buildPlan(madeReading(tableOf([100], [[0, 0]])), {}, noCheckpoint);
    expect(plan.steps).toEqual([]);
    expect(plan.warnings.map(({ code }) => code)).toEqual(['nothing-to-paint']);
  });

  it('stay away from a landscape and a palette of her box', async () => {
    const plan = await buildPlan(madeReading(hills), { box }, noCheckpoint);
    expect(plan.warnings).toEqual([]);
  });
});

it('stops when it is cancelled', async () => {
  let calls = 0;
  const stop = async (): Promise<void> => {
    calls++;
    if (calls > 5) throw Object.assign(new Error('stopped'), { name: 'AbortError' });
  };
  await expect(buildPlan(madeReading(hills), {}, stop)).rejects.toMatchObject({
    name: 'AbortError',
  });
});
