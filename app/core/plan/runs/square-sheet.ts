import type { Lab } from '../../colour/lab.ts';
import { lightnessOfSum, spectrumSize, weightY } from '../../colour/spectrum.ts';
import { drySurface, escaping } from '../../colour/surface.ts';
import { textFingerprint } from '../../numeric/hash.ts';
import type { LastAnswers } from '../../numeric/memo.ts';
import { defaultPaper, defaultPaperLab } from '../../paint/colour-of-washes.ts';
import { butterFrom, creamFrom } from '../../paint/consistency.ts';
import { type MixSpectra, mixSpectra } from '../../paint/layer.ts';
import { blurWithin } from '../../raster/gaussian-blur.ts';
import type { Mix } from '../plan.ts';
import type { PlacedRow } from '../steps/apply-steps-to-sheet.ts';
import type { Group, SquareAim } from './group.ts';
import { GroupAims } from './group-aims.ts';
import { RowColours } from './row-colours.ts';
import { fingerprintOf, type Run, type RunInput } from './run.ts';
import { SquareSolver, type Underneath, writeLayers } from './solve-square.ts';

/** A wash that only leads to a darker one counts so much (own). */
const onTheWay = 0.05;
/** Amounts are smoothed once more, by this part of the scale. */
const amountSmoothing = 1 / 3;

/** Numbers of the squares some rows lie in, rising, each once. */
function squaresOf(rows: readonly number[], squares: readonly number[]): number[] {
  let most = -1;
  for (const row of rows) most = Math.max(most, squares[row]);
  const isThere = new Uint8Array(most + 1);
  for (const row of rows) isThere[squares[row]] = 1;
  const there: number[] = [];
  for (let square = 0; square <= most; square++) if (isThere[square]) there.push(square);
  return there;
}

/** How much of a group's own puddle and of the other lies in every square of the sheet, ml/m2. */
export interface Amounts {
  readonly own: Float32Array;
  readonly other: Float32Array;
}

/** The sheet, row by row of the squares: what lies there and what it is to become. */
export class SquareSheet {
  readonly #input: RunInput;
  /** Rows x 36 samples, inside the surface. */
  readonly #light: Float64Array;
  readonly #colours: RowColours;
  readonly #aims: GroupAims;
  readonly #rowsOfSlot: readonly (readonly number[])[];
  /** Slots that have paint on them. */
  readonly #painted = new Set<number>();
  readonly #solver = new SquareSolver();
  readonly #known: LastAnswers<Amounts> | undefined;
  /** Of every slot: what tells apart all that was laid on it, and what the picture asks of it. */
  readonly #history: string[];

  /** `known` spares amounts that were found before, for the same colours over the same washes. */
  constructor(input: RunInput, known?: LastAnswers<Amounts>) {
    this.#input = input;
    this.#known = known;
    const start = known ? fingerprintOf(input) : '';
    this.#history = input.slots.map(() => start);
    const { squares, slots } = input;
    const count = squares.slots.length;
    this.#light = new Float64Array(count * spectrumSize);
    this.#aims = new GroupAims(input);
    const rowsOfSlot: number[][] = slots.map(() => []);
    for (let row = 0; row < count; row++) rowsOfSlot[squares.slots[row]]?.push(row);
    this.#rowsOfSlot = rowsOfSlot;
    const light = this.#light;
    light.set(defaultPaper);
    for (let done = spectrumSize; done < light.length; done *= 2) light.copyWithin(done, 0, done);
    this.#colours = new RowColours(squares, slots.length);
  }

  /** Paints of a mix that are not in the palette are left out of it. */
  spectraOf({ parts }: Pick<Mix, 'parts'>) {
    const there = parts.flatMap((part) => {
      const paint = this.#input.paints.find(({ id }) => id === part.paint);
      return paint ? [{ paint, parts: part.parts }] : [];
    });
    return mixSpectra(
      there.map(({ paint }) => paint),
      there.map((part) => part.parts),
    );
  }

  /** What a mix covers in a step: at its full strength and, where bands take it thinner, at the weaker one. */
  groupsOf({ mix, slots: own }: PlacedRow, stepSlots: readonly number[]): Group[] {
    if (mix.parts.length === 0) return [];
    const { slots } = this.#input;
    const there = own.filter((slot) => stepSlots.includes(slot));
    const isWeak = (slot: number): boolean =>
      mix.weaker?.bands.includes(slots[slot]?.band ?? 0) ?? false;
    const spectra = this.spectraOf(mix);
    const most = Math.min(spectra.coat, mix.wash === 1 ? creamFrom : butterFrom);
    const group = (strength: Run['strength'], load: number, of: readonly number[]): Group[] => {
      const rows = of.flatMap((slot) => this.#rowsOfSlot[slot] ?? []);
      return rows.length === 0 || load <= 0
        ? []
        : [{ mix, strength, load, rows, spectra, most: Math.max(most, load) }];
    };
    return [
      ...group(
        'full',
        mix.load,
        there.filter((slot) => !isWeak(slot)),
      ),
      ...group('weaker', mix.weaker?.load ?? mix.load, there.filter(isWeak)),
    ];
  }

  /** Lays a group's paint on that share of the paper, 1 but for a dry brush, and says how it runs. */
  lay(group: Group, isFinished: (slot: number) => boolean, covers: number): Run {
    const { mix, strength, rows, spectra } = group;
    const { squares, slots } = this.#input.squares;
    const finished = rows.filter((row) => isFinished(slots[row]));
    const covered = squaresOf(rows, squares);
    const runs = this.#aims.has(group, finished) && !this.#input.even.has(mix.id);
    const meets = runs ? mix.meets : undefined;
    const puddles = meets ? [spectra, this.spectraOf(meets)] : [spectra];
    const now = this.#remember(group, meets, finished, covers);
    const before = this.#known?.get(now);
    const laid = before ?? this.#amountsOf(group, puddles, runs, new Set(finished), covered);
    if (!before) this.#known?.keep(now, laid);
    const { own, other } = laid;
    for (const row of rows) {
      this.#painted.add(slots[row]);
      this.#colours.change(row);
      const square = squares[row];
      const underneath = this.#light.subarray(row * spectrumSize, (row + 1) * spectrumSize);
      writeLayers(puddles, own[square], other[square], underneath, underneath, covers);
    }
    return {
      mix: mix.id,
      strength,
      ...(meets && { meets }),
      squares: covered,
      own: covered.map((square) => own[square]),
      other: meets ? covered.map((square) => other[square]) : [],
    };
  }

  /** A group by all its amounts depend on: itself and what lies under it. Its slots bear it from now on. */
  #remember(
    { mix, strength, load, most, rows }: Group,
    meets: Mix['meets'],
    finished: readonly number[],
    covers: number,
  ): string {
    if (!this.#known) return '';
    const { slots } = this.#input.squares;
    const own = [...new Set(rows.map((row) => slots[row]))];
    const ends = [...new Set(finished.map((row) => slots[row]))];
    const { wash, parts, expected } = mix;
    const even = this.#input.even.has(mix.id);
    const asked = [wash, parts, expected, strength, load, most, meets?.parts, even, ends, covers];
    const under = own.map((slot) => [slot, this.#history[slot]]);
    const now = textFingerprint(JSON.stringify([asked, under]));
    for (const slot of own) this.#history[slot] = now;
    return now;
  }

  #amountsOf(
    group: Group,
    puddles: readonly MixSpectra[],
    runs: boolean,
    finished: ReadonlySet<number>,
    covered: readonly number[],
  ): Amounts {
    const { across, down } = this.#input.squares;
    const own = new Float32Array(across * down).fill(group.load);
    const other = new Float32Array(across * down);
    if (runs) this.#solveSquares(group, puddles, finished, covered, own, other);
    return { own, other };
  }

  /**
   * What about so many of a group's squares are to become. Where it finishes no shape and is a step on the way, what
   * its mix was solved for, of little weight.
   */
  aims(group: Group, isFinished: (slot: number) => boolean, about: number): SquareAim[] {
    const { slots, squares } = this.#input.squares;
    const finished = group.rows.filter((row) => isFinished(slots[row]));
    const aim = this.#aims.has(group, finished) ? this.#aims.of(group, new Set(finished)) : null;
    const rows = finished.length > 0 ? finished : group.rows;
    const underneaths = this.#allUnderneath(group.rows);
    const coverage = this.#coverage(rows);
    const covered = squaresOf(rows, squares);
    const stride = Math.max(1, Math.floor(covered.length / about));
    return covered
      .filter((_, n) => n % stride === 0)
      .flatMap((square) => {
        const underneath = underneaths[square];
        if (!underneath) return [];
        const target: Lab = aim
          ? [aim[0][square], aim[1][square], aim[2][square]]
          : group.mix.expected;
        return [
          {
            underneath,
            target,
            weight: stride * coverage[square] * (finished.length > 0 ? 1 : onTheWay),
          },
        ];
      });
  }

  /** Fills the amounts of the covered squares. */
  #solveSquares(
    group: Group,
    puddles: readonly MixSpectra[],
    finished: ReadonlySet<number>,
    covered: readonly number[],
    own: Float32Array,
    other: Float32Array,
  ): void {
    const { across, down } = this.#input.squares;
    const aim = this.#aims.of(group, finished);
    const underneaths = this.#allUnderneath(group.rows);
    const solver = this.#solver;
    const both = puddles.length > 1;
    solver.amounts[0] = group.load;
    solver.amounts[1] = both ? 0.2 : 0;
    const weights = new Float32Array(across * down);
    const coverage = this.#coverage(group.rows);
    for (const square of covered) {
      solver.amounts[0] = Math.max(solver.amounts[0], 0.05);
      if (both) solver.amounts[1] = Math.max(solver.amounts[1], 0.05);
      const underneath = underneaths[square];
      const target = [aim[0][square], aim[1][square], aim[2][square]] as const;
      if (underneath) solver.solve(puddles, underneath, target, group.most);
      own[square] = solver.amounts[0];
      other[square] = solver.amounts[1];
      weights[square] = coverage[square];
    }
    const sigma = this.#aims.sigmaOf(group.mix) * amountSmoothing;
    blurWithin([own, ...(both ? [other] : [])], weights, { width: across, height: down }, sigma);
  }

  #coverage(rows: readonly number[]): Float32Array {
    const { across, down, squares, shares } = this.#input.squares;
    const sum = new Float32Array(across * down);
    for (const row of rows) sum[squares[row]] = sum[squares[row]] + Math.max(0.01, shares[row]);
    return sum;
  }

  /** What lies in every square under a group: the mean of its rows by their shares. */
  #allUnderneath(rows: readonly number[]): Underneath[] {
    const { squares, shares } = this.#input.squares;
    const rowsAt: number[][] = [];
    for (const row of rows) {
      const square = squares[row];
      const own = rowsAt[square];
      if (own) own.push(row);
      else rowsAt[square] = [row];
    }
    const under: Underneath[] = [];
    for (const square of squaresOf(rows, squares)) {
      const own = rowsAt[square];
      under[square] = this.underneathOf(
        own,
        own.map((row) => Math.max(0.01, shares[row])),
      );
    }
    return under;
  }

  /** What lies in some rows now, the mean of their light by these shares; to be looked at before more is laid. */
  underneathOf(rows: readonly number[], shares: readonly number[]): Underneath {
    const reflectance = this.#meanLight(rows, shares);
    let y = 0;
    for (let i = 0; i < spectrumSize; i++)
      y += escaping(reflectance[i], drySurface.k2) * weightY[i];
    return { reflectance, lightness: lightnessOfSum(y, drySurface) };
  }

  #meanLight(rows: readonly number[], shares: readonly number[]): Float64Array {
    const light = this.#light;
    const [first] = rows;
    if (rows.length === 1) return light.subarray(first * spectrumSize, (first + 1) * spectrumSize);
    const mean = new Float64Array(spectrumSize);
    const all = shares.reduce((sum, share) => sum + share, 0);
    for (let n = 0; n < rows.length; n++) {
      const start = rows[n] * spectrumSize;
      const share = shares[n] / all;
      for (let i = 0; i < spectrumSize; i++) mean[i] += share * light[start + i];
    }
    return mean;
  }

  /** Dry colours as they are now: of every slot, and a table of every row. */
  look(): { slots: readonly Lab[]; table: Uint8ClampedArray } {
    return { slots: this.slotColours(), table: this.#colours.table() };
  }

  /** Dry colours of the slots as they are now, each the mean of its rows; the paper's where nothing lies. */
  slotColours(): readonly Lab[] {
    const means = this.#colours.slotMeans(this.#light);
    return means.map((mean, slot) => (this.#painted.has(slot) && mean) || defaultPaperLab);
  }
}
