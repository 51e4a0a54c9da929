// Palette and plan by stages, in Node, by processor time: other work on the machine lengthens it less than the clock's.

import type { PlanWishes } from '../../app/core/decisions/plan-wishes.ts';
import { isWhiteOrBlack } from '../../app/core/paint/paint.ts';
import { knownPaints, placeAmongOwned } from '../../app/core/paint/paint-box.ts';
import { LibraryMemo } from '../../app/core/palette/library/mix-library.ts';
import { openSearch } from '../../app/core/palette/search/search-palette.ts';
import { buildPlan } from '../../app/core/plan/build-plan.ts';
import { createPlanMemory } from '../../app/core/plan/plan-memory.ts';
import type { Reading, ReadingWishes } from '../../app/core/reading/reading.ts';
import type { PhotoBytes } from './bench.ts';
import { noPause, readBytes } from './read-bytes.ts';

const known = knownPaints([]);
const placeOf = (id: string): number => {
  const place = placeAmongOwned(id);
  return place < 0 ? known.length : place;
};
/** All paints but whites and blacks, those boxes hold most often first. */
const ranked = known
  .filter(({ ci }) => !isWhiteOrBlack(ci))
  .map(({ id }) => id)
  .sort((one, two) => placeOf(one) - placeOf(two));

async function msOf<T>(work: () => Promise<T>): Promise<readonly [ms: number, answer: T]> {
  const since = process.cpuUsage();
  const answer = await work();
  const { user, system } = process.cpuUsage(since);
  return [(user + system) / 1000, answer];
}

const said = (ms: number): string => ms.toFixed(0).padStart(6);

/** The search among so many paints for one picture: first, and again for other pictures of the same box. */
async function searchTimes(count: number, { slots }: Reading) {
  const library = new LibraryMemo();
  const box = ranked.slice(0, count);
  const search = () => openSearch(slots, known, { box }, noPause, library);
  const [first] = await msOf(search);
  // Other colours: what is known of the mixes stays, what they cost is found anew.
  const others = slots.map((slot) => ({
    ...slot,
    target: [slot.target[0] - 1, slot.target[1], slot.target[2]] as const,
  }));
  const [warm] = await msOf(() => openSearch(others, known, { box }, noPause, library));
  const [again] = await msOf(search);
  return { first, warm, again };
}

/** How the cost grows from one count to another: its exponent. */
const exponent = (from: number, to: number, factor: number): string =>
  (Math.log(to / from) / Math.log(factor)).toFixed(1);

/** L* by which the limit of the darkest band is moved. */
const movedBy = 4;

/** Her changes, one at a time: what is wished for then, and the reading where it is another. */
function changesOf(palette: readonly string[], box: readonly string[], moved: Reading) {
  const wishes: Readonly<Record<string, PlanWishes>> = {
    nothing: {},
    'a step left out': { edits: [{ kind: 'skip', key: 'accents/sheet/0', skipped: true }] },
    'a hair dryer': { weather: { celsius: 20, humidity: 50, airSpeed: 0.1, hairDryer: true } },
    'two hours': { evening: 120 },
    'two puddles a wash': { puddlesPerWash: 2 },
    'four paints at most': { paletteSize: 4 },
    'a paint of the palette less': { box: box.filter((id) => id !== palette.at(-1)) },
    'these four paints and no others': { chosen: ranked.slice(0, 4) },
  };
  const asked = Object.entries(wishes).map(([change, asked]) => ({ change, asked, read: null }));
  return [...asked, { change: 'a limit of values moved', asked: {}, read: moved }];
}

const middle = (list: readonly number[]): number =>
  [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0;

/** The plan by stages, for a box of twelve. */
async function planTimes(reading: Reading, readWith: (wishes: ReadingWishes) => Promise<Reading>) {
  const box = ranked.slice(0, 12);
  const memory = createPlanMemory();
  const plan = (wishes: PlanWishes, from = memory) =>
    buildPlan(reading, { box, ...wishes }, noPause, from);
  await plan({}); // the mixes of the box, and the code warm
  const { library, darkest, dryingModel } = memory;
  const fresh = () => ({ ...createPlanMemory(), library, darkest, dryingModel });
  const [searched, { palette }] = await msOf(() => plan({}, fresh()));
  const chosen = palette.map(({ id }) => id);
  const [solved] = await msOf(() => plan({ chosen }, fresh()));
  const [run] = await msOf(() => plan({}, { ...memory, runs: createPlanMemory().runs }));
  const limits = reading.bands.slice(0, -1).map(({ from }) => from);
  const moved = await readWith({
    limits: limits.reverse().map((limit, n) => (n === 0 ? limit + movedBy : limit)),
  });
  const changed: string[] = [];
  for (const { change, asked, read } of changesOf(chosen, box, moved)) {
    const took: number[] = [];
    for (let round = 0; round <= 5; round++) {
      const known = fresh();
      await buildPlan(reading, { box, present: chosen }, noPause, known);
      const wishes = { box, present: chosen, ...asked };
      const [ms] = await msOf(() => buildPlan(read ?? reading, wishes, noPause, known));
      if (round > 0) took.push(ms);
    }
    changed.push(`${change} ${middle(took).toFixed(0)}`);
  }
  return { searched, solved, run, changed };
}

/** Palette and plan for 2 to 7 bands, the mixes of the box known: ms. */
async function bandTimes(readWith: (wishes: ReadingWishes) => Promise<Reading>) {
  const box = ranked.slice(0, 12);
  const { library, darkest, dryingModel } = createPlanMemory();
  const known = { library, darkest, dryingModel };
  const took = new Map<number, number>();
  for (const bands of [2, 3, 4, 5, 6, 7]) {
    const reading = await readWith({ bands });
    const plan = () => buildPlan(reading, { box }, noPause, { ...createPlanMemory(), ...known });
    await plan();
    const [ms] = await msOf(plan);
    took.set(bands, ms);
  }
  return took;
}

/** Prints the stages, for each of some photographs by name. */
export async function benchPlanStages(
  photos: Readonly<Record<string, PhotoBytes>>,
  print: (line: string) => void,
): Promise<void> {
  print('palette and plan by stages, ms of processor time');
  for (const [name, photo] of Object.entries(photos)) {
    const readWith = async (wishes: ReadingWishes) => (await readBytes(photo, wishes)).reading;
    const reading = await readWith({});
    print(`  ${name}`);
    const growth = new Map<number, number>();
    for (const count of [5, 12, 15, 20, 30, 60, ranked.length]) {
      const { first, warm, again } = await searchTimes(count, reading);
      growth.set(count, warm);
      print(
        `    search among ${String(count).padStart(3)} paints: first ${said(first)}, another picture ${said(warm)}, the same again ${said(again)}`,
      );
    }
    const power = (from: number, to: number): string =>
      exponent(growth.get(from) ?? 0, growth.get(to) ?? 0, to / from);
    print(
      `    to the power of ${power(5, 15)} (5 to 15), ${power(15, 30)} (15 to 30), ${power(30, 60)} (30 to 60, by a shortlist) of the paints`,
    );
    const { searched, solved, run, changed } = await planTimes(reading, readWith);
    print(
      `    box of 12: palette and plan ${said(searched)}; paints chosen ${said(solved)}; runs and marks alone ${said(run)}`,
    );
    print(`    after a change: ${changed.join(', ')}`);
    const byBands = await bandTimes(readWith);
    const list = [...byBands].map(([bands, ms]) => `${bands}: ${ms.toFixed(0)}`).join(', ');
    const grown = exponent(byBands.get(2) ?? 0, byBands.get(7) ?? 0, 7 / 2);
    print(`    palette and plan by bands, ${list}; to the power of ${grown} of the bands`);
  }
}
