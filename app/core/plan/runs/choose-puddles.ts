import type { PlanWishes } from '../../decisions/plan-wishes.ts';
import { proposedPuddles } from '../../limits.ts';
import { type MixSpectra, mixSpectra } from '../../paint/layer.ts';
import type { Part } from '../../paint/mix.ts';
import type { Paint } from '../../paint/paint.ts';
import { coarserSquares } from '../../reading/colour-squares.ts';
import type { Mix } from '../plan.ts';
import type { SolvedPassage, SolvedWash } from '../plan-facts.ts';
import type { PlanMemory } from '../plan-memory.ts';
import { PuddleNames } from '../solve/lay-wash.ts';
import {
  dropUnusedPaints,
  passagesAsked,
  type SolvedPalette,
  type WashSolver,
} from '../solve/solve-palette.ts';
import type { Group } from './group.ts';
import type { PairOption, PairPoint } from './pair-judge.ts';
import type { Run, RunInput } from './run.ts';
import { runInput, withRunLoads } from './run-plan.ts';
import { pairOptions, sharePairs } from './share-pairs.ts';
import { SquareSheet } from './square-sheet.ts';
import { missedBy, WantedPaint } from './wanted-paint.ts';

/** Puddles are chosen on squares so many times as wide as they then run over: as good, in a quarter of the time. */
const coarser = 2;

/** Squares of a family's shapes looked at, in each wash and strength. */
const squaresSampled = 24;

/**
 * ml/m2 of a puddle where another meets it, at least: by itself it might do no good there at all, but the two are laid
 * (own).
 */
const leastBesideOther = 0.1;

/** Paints of an option, most first. */
const partsOf = ({ members, parts }: PairOption, paints: readonly Paint[]): Part[] =>
  members
    .map((member, n) => ({ paint: paints[member].id, parts: parts[n] }))
    .sort((one, two) => two.parts - one.parts);

interface GroupPoints {
  readonly group: Group;
  readonly points: readonly PairPoint[];
}

/** ml/m2 of a mix by itself that does most of what these places want. */
function loadOf({ unit }: PairOption, points: readonly PairPoint[]): number {
  let [load, area] = [0, 0];
  for (const { wanted, slopes, weight, most } of points) {
    let [does, wants] = [1e-6, 0];
    for (let r = 0; r < missedBy; r++) {
      const slope = unit.reduce((sum, part, p) => sum + part * slopes[p * missedBy + r], 0);
      does += slope * slope;
      wants += slope * wanted[r];
    }
    load += weight * Math.min(most, Math.max(0, wants / does));
    area += weight;
  }
  return area > 0 ? Number((load / area).toPrecision(3)) : 0;
}

/** One passage: its puddles chosen wash by wash over what then lies there. */
class PassagePuddles {
  readonly #sheet: SquareSheet;
  readonly #wanted: WantedPaint;
  readonly #options: readonly PairOption[];
  readonly #most: number;
  readonly #mixed = new Set<number>();
  readonly #input: RunInput;
  readonly runs: Run[] = [];

  constructor(input: RunInput, most: number) {
    this.#input = input;
    this.#sheet = new SquareSheet(input);
    const single = (paint: Paint): MixSpectra => mixSpectra([paint], [1]);
    this.#wanted = new WantedPaint(input.paints.map(single));
    this.#options = pairOptions(input.paints.length);
    this.#most = most;
  }

  /** The wash with its mixes made from the puddles chosen; what they leave is laid. */
  wash(wash: SolvedWash, isFinished: (slot: number) => boolean): SolvedWash {
    const { slots, paints } = this.#input;
    const placed = wash.mixes.map((mix) => ({
      mix,
      slots: wash.slots.filter((slot) => slots[slot].family === mix.family),
    }));
    const groups = placed.flatMap((row) => this.#sheet.groupsOf(row, wash.slots));
    const families = [...new Set(groups.map(({ mix }) => mix.family))];
    if (families.length === 0) return wash;
    const wanting = groups.map((group) => this.#pointsOf(group, families, isFinished));
    const all = wanting.flatMap(({ points }) => points);
    const pairs = sharePairs(all, this.#options, families.length, this.#most, this.#mixed);
    for (const n of pairs.puddles) this.#mixed.add(n);
    const mixes = wash.mixes.map((mix): Mix => {
      const f = families.indexOf(mix.family);
      if (f < 0) return mix;
      const option = this.#options[pairs.own[f]];
      const other = pairs.meets[f];
      const load = (strength: Run['strength'], before: number): number => {
        const own = wanting.find(({ group }) => group.mix === mix && group.strength === strength);
        if (!own) return before;
        const alone = loadOf(option, own.points);
        return other === null ? alone : Math.max(leastBesideOther, alone);
      };
      const { weaker } = mix;
      return {
        ...mix,
        parts: partsOf(option, paints),
        load: load('full', mix.load),
        ...(weaker && { weaker: { ...weaker, load: load('weaker', weaker.load) } }),
        ...(other !== null && {
          meets: { parts: partsOf(this.#options[other], paints), puddle: null },
        }),
      };
    });
    for (const [n, row] of placed.entries()) {
      for (const group of this.#sheet.groupsOf({ ...row, mix: mixes[n] }, wash.slots)) {
        this.runs.push(this.#sheet.lay(group, isFinished, 1));
      }
    }
    const after = this.#sheet.slotColours();
    return { ...wash, mixes, after: wash.slots.map((slot) => after[slot]) };
  }

  #pointsOf(
    group: Group,
    families: readonly number[],
    isFinished: (slot: number) => boolean,
  ): GroupPoints {
    const family = families.indexOf(group.mix.family);
    const wanted = this.#wanted;
    const points = this.#sheet.aims(group, isFinished, squaresSampled).map((aim): PairPoint => {
      wanted.solve(aim.underneath, aim.target, group.most);
      return {
        family,
        wanted: Float64Array.from(wanted.wanted),
        slopes: Float64Array.from(wanted.slopes),
        most: group.most,
        weight: aim.weight,
      };
    });
    return { group, points };
  }
}

/**
 * The washes of a plan from puddles chosen by what the picture's colours want square by square, not by the mean of each
 * family: at most `most` a wash and passage, and every family runs between two of them where that pays. Puddles are
 * named anew.
 */
export function choosePuddles(
  passages: readonly SolvedPassage[],
  input: RunInput,
  most: number,
): SolvedPassage[] {
  const chosen = passages.map(({ passage, washes }): SolvedPassage => {
    const puddles = new PassagePuddles(input, most);
    const running = washes.map((wash, n) =>
      puddles.wash(wash, (slot) =>
        washes.every((later, w) => w <= n || !later.slots.includes(slot)),
      ),
    );
    const mixes = withRunLoads(
      running.flatMap((wash) => wash.mixes),
      puddles.runs,
      input.paints,
    );
    const known = new Map(mixes.map((mix) => [mix.id, mix]));
    return {
      passage,
      washes: running.map((wash) => ({
        ...wash,
        mixes: wash.mixes.map((mix) => known.get(mix.id) ?? mix),
      })),
    };
  });
  return named(chosen);
}

/** Puddles named in the order they are first used; a paint by itself that only meets others has no letter. */
function named(passages: readonly SolvedPassage[]): SolvedPassage[] {
  const names = new PuddleNames();
  const withOwn = passages.map(({ passage, washes }) => ({
    passage,
    washes: washes.map((wash) => ({
      ...wash,
      mixes: wash.mixes.map((mix) =>
        mix.parts.length === 0 ? mix : { ...mix, puddle: names.of(mix.parts) },
      ),
    })),
  }));
  return withOwn.map(({ passage, washes }) => ({
    passage,
    washes: washes.map((wash) => ({
      ...wash,
      mixes: wash.mixes.map(({ meets, ...mix }): Mix => {
        return meets ? { ...mix, meets: { ...meets, puddle: names.known(meets.parts) } } : mix;
      }),
    })),
  }));
}

/** The solver's washes with puddles chosen for how they run over the sheet, from these paints. */
export function runningSolver(
  solve: WashSolver,
  palette: readonly Paint[],
  wishes: PlanWishes,
  memory: PlanMemory,
): WashSolver {
  return async (washes) => {
    const solved = await solve(washes);
    const facts = { ...solved.facts, paints: palette };
    const fine = runInput(facts, solved.range, new Set());
    if (!fine) return solved;
    const asking = passagesAsked(facts.slots, palette, { ...wishes, washes });
    const choose = (): SolvedPassage[] => {
      const squares = coarserSquares(fine.squares, coarser);
      const input = { ...fine, squares, squareMm: coarser * fine.squareMm };
      return choosePuddles(facts.passages, input, wishes.puddlesPerWash ?? proposedPuddles);
    };
    const passages = memory.running.get(asking) ?? choose();
    memory.running.keep(asking, passages);
    const running: SolvedPalette = {
      ...solved,
      facts: { ...facts, passages, paints: dropUnusedPaints(palette, passages, wishes) },
    };
    return running;
  };
}
