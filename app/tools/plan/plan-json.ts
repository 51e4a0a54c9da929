import { concentrationOf } from '../../core/paint/consistency.ts';
import { strengthOf } from '../../core/paint/paint.ts';
import { thinningFor } from '../../core/paint/thinning.ts';
import type { Mark } from '../../core/plan/details/mark.ts';
import { paintNameIn } from '../../core/plan/paint-name-in.ts';
import {
  type EveningFit,
  type Mix,
  type PaletteEntry,
  passageOf,
  type Step,
  surfaceOf,
  type WashArea,
  type WashPlan,
} from '../../core/plan/plan.ts';
import { type PuddleAmount, puddleAmount } from '../../core/plan/puddle-amount.ts';
import { isOfReach, type PlanWarning } from '../../core/plan/reach/plan-warning.ts';
import { planCautions } from '../../core/plan/steps/step-cautions.ts';
import { computePxPerMm } from '../../core/raster/size.ts';
import { edgeShares } from '../../core/reading/edges/edge.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { onTheSheet, reservesOf } from '../../core/reading/tone-range.ts';
import { reservesIn } from '../../core/reading/whites/whites.ts';
import { amountInWords } from '../../core/words/plan/amounts.ts';
import { brushesInWords } from '../../core/words/plan/tools.ts';
import { words } from '../../core/words/plan/words.ts';
import { warningInWords } from '../../core/words/reading/warnings.ts';
import { stepPicture } from './write-pictures.ts';

/** JSON has no infinity: null where paint is taken without water. */
const finite = (concentration: number): number | null =>
  Number.isFinite(concentration) ? concentration : null;

/** The rows of a puddle that are painted thinner than it is mixed, with its parts and those of water. */
function thinnedRows(amount: PuddleAmount, rows: readonly Mix[]) {
  return rows.flatMap(({ id, load, weaker }) =>
    [{ load, weaker: false }, ...(weaker ? [{ load: weaker.load, weaker: true }] : [])].flatMap(
      (each) => {
        const thinning = thinningFor(amount.concentration, each.load);
        return thinning ? [{ mix: id, weaker: each.weaker, ...thinning }] : [];
      },
    ),
  );
}

/** How much of every puddle to mix for every wash, as it is told: one row a puddle x wash. */
function puddleRows(plan: WashPlan, { sheet }: Pick<Reading, 'sheet'>) {
  const places = new Map(
    plan.mixes.flatMap(({ puddle, wash }) =>
      puddle === null ? [] : [[`${puddle} ${wash}`, { puddle, wash }] as const],
    ),
  );
  return [...places.values()].flatMap(({ puddle, wash }) => {
    const rows = plan.mixes.filter((mix) => mix.puddle === puddle && mix.wash === wash);
    const amount = puddleAmount(plan, rows, sheet);
    if (!amount) return [];
    const { ml, waterMl, concentration, paints } = amount;
    return [
      {
        puddle,
        wash,
        ml,
        waterMl,
        concentration: finite(concentration),
        paints: paints.map((each) => ({ paint: each.paint, ml: each.ml, cm: each.mm / 10 })),
        thinned: thinnedRows(amount, rows),
        text: amountInWords(amount, paintNameIn(plan)),
      },
    ];
  });
}

/** L* of every slot after a step, dry, by band, family and passage. */
const stepLightness = ({ slots }: Pick<WashPlan, 'slots'>, { after }: Pick<Step, 'after'>) =>
  slots.map(({ band, family, passage }, i) => ({
    band,
    family,
    passage,
    lightness: after[i]?.[0] ?? null,
  }));

/** A paint as the plan used it. */
function paletteRow({ id, ci, name, why }: PaletteEntry, { optics }: Pick<WashPlan, 'optics'>) {
  const paint = optics.find((each) => each.id === id);
  return {
    id,
    ci,
    name,
    why: words(why),
    strength: strengthOf(paint ?? {}),
    mostLoad: paint?.mostLoad ?? null,
    provenance: paint?.provenance ?? null,
    confidence: paint?.confidence ?? null,
  };
}

/** How much of a mix is laid: loads of the optics table in all, ml of tube paint, and how it is mixed for that. */
const laid = (load: number, loadsPerMl: number) => ({
  load: load * loadsPerMl,
  paint_ml_per_m2: load,
  concentration: finite(concentrationOf(load)),
});

const rounded = (value: number, digits = 2): number => Number(value.toFixed(digits));

/** How a mix runs: in every square of the sheet it covers, by its middle in mm, what lies of it and of what it meets. */
function runRows(mix: Mix, { runs = [] }: Pick<WashPlan, 'runs'>, reading: Reading) {
  const { squares, raster, sheet } = reading;
  if (!squares) return [];
  const sideMm = squares.sidePx / computePxPerMm(raster, sheet);
  return runs
    .filter((run) => run.mix === mix.id)
    .map(({ strength, meets, squares: covered, own, other }) => ({
      weaker: strength === 'weaker',
      meets: meets ?? null,
      sideMm: rounded(sideMm),
      squares: covered.map((square, n) => [
        rounded(((square % squares.across) + 0.5) * sideMm, 1),
        rounded((Math.floor(square / squares.across) + 0.5) * sideMm, 1),
        rounded(own[n] ?? 0, 3),
        rounded(other[n] ?? 0, 3),
      ]),
    }));
}

/** The marks of a kind: where on the sheet, how large, of which mix, what they dry to. */
function markRows(kind: Mark['kind'], { steps }: Pick<WashPlan, 'steps'>, reading: Reading) {
  const { widthMm, heightMm } = reading.sheet;
  return (steps.at(-1)?.marks ?? [])
    .filter((mark) => mark.kind === kind)
    .flatMap(({ shape, mix, load, lab }) => {
      const found = reading.details?.shapes[shape];
      if (!found) return [];
      const [x, y] = found.at;
      const paint = { mix: mix ?? null, paint_ml_per_m2: load ?? null, expected: lab };
      const { areaMm2 } = found;
      return [{ xMm: rounded(x * widthMm, 1), yMm: rounded(y * heightMm, 1), areaMm2, ...paint }];
    });
}

function mixRow(mix: Mix, plan: Pick<WashPlan, 'optics' | 'runs'>, reading: Reading) {
  const { optics } = plan;
  const { parts } = mix;
  const sum = parts.reduce((all, part) => all + part.parts, 0);
  const loads = parts.reduce(
    (all, part) => all + part.parts * strengthOf(optics.find(({ id }) => id === part.paint) ?? {}),
    0,
  );
  const loadsPerMl = sum > 0 ? loads / sum : 0;
  return {
    id: mix.id,
    wash: mix.wash,
    passage: mix.passage,
    family: mix.family,
    puddle: mix.puddle,
    parts,
    ...laid(mix.load, loadsPerMl),
    consistency: mix.consistency,
    target: mix.target,
    expected: mix.expected,
    runs: runRows(mix, plan, reading),
    ...(mix.weaker && { weaker: { ...mix.weaker, ...laid(mix.weaker.load, loadsPerMl) } }),
  };
}

const warningRow = (warning: PlanWarning) => ({ ...warning, text: words(warning.text) });

const areaRow = ({ name, brush, board, ...area }: WashArea) => ({
  name: words(name),
  ...area,
  ...(brush && { brush: brushesInWords(brush).join('; ') }),
  ...(board && { board: words(board) }),
});

const fitRow = ({ gaveUp, dryer, tooLong, ...fit }: EveningFit) => ({
  ...fit,
  gaveUp: gaveUp.map(words),
  ...(dryer && { dryer: words(dryer) }),
  ...(tooLong && { tooLong: { ...tooLong, text: words(tooLong.text) } }),
});

/**
 * What the command prints, its keys kept stable. Planned lightness, reserves and range are those of
 * the palette found. Lab is D65 / 2 degree; lightness is L* 0..100; shares are of the cropped area.
 */
export function planJson(reading: Reading, plan: WashPlan, withPictures: boolean) {
  const whites = reading.whites?.filter(({ slot }) => plan.slots[slot]?.reserve);
  const reserves = whites ? reservesIn(whites, plan.slots) : reservesOf(plan.slots);
  return {
    raster: reading.raster,
    sheet: { widthMm: reading.sheet.widthMm, heightMm: reading.sheet.heightMm },
    lightness: reading.lightness,
    range: plan.range,
    bands: reading.bands.map((band) => ({
      band: band.band,
      from: band.from,
      to: band.to,
      share: band.share,
      lightness: band.lightness,
      value: band.value,
      plannedLightness: onTheSheet(plan.range, band.lightness),
    })),
    subjectBands: reading.subjectBands ?? null,
    families: reading.families.map(({ id, lab, share }) => ({ id, lab, share })),
    reserves: { share: reserves.share, count: reserves.count },
    edges: edgeShares(reading.edges ?? []),
    masses: reading.masses,
    warnings: [
      ...reading.warnings.map((warning) => ({ code: warning.code, text: warningInWords(warning) })),
      ...plan.warnings.map(warningRow),
    ],
    reach: plan.warnings.filter(isOfReach).map(warningRow),
    surface: surfaceOf(plan),
    palette: plan.palette.map((entry) => paletteRow(entry, plan)),
    mixes: plan.mixes.map((mix) => mixRow(mix, plan, reading)),
    puddles: puddleRows(plan, reading),
    details: markRows('detail', plan, reading),
    accents: markRows('accent', plan, reading),
    sparkles: markRows('sparkle', plan, reading),
    subject: reading.subject ?? null,
    proposedSubject: reading.proposedSubject?.path ?? null,
    washesWhy: plan.washesWhy ? words(plan.washesWhy) : null,
    passages: plan.passages ? { ...plan.passages, why: words(plan.passages.why) } : null,
    fit: plan.fit ? fitRow(plan.fit) : null,
    cautions: planCautions(plan),
    steps: plan.steps.map((step) => ({
      n: step.n,
      kind: step.kind,
      title: words(step.title),
      passage: passageOf(step, plan),
      bands: step.bands,
      families: step.families,
      mixes: step.mixes,
      paper: step.paper,
      technique: step.technique,
      areas: (step.areas ?? []).map(areaRow),
      prompt: words(step.prompt),
      watch: words(step.watch),
      soften: words(step.soften),
      touches: (step.touches ?? []).map((touch) => ({ ...touch, text: words(touch.text) })),
      brush: brushesInWords(step.brush).join('; ') || null,
      board: step.board ? words(step.board) : null,
      rules: step.rules,
      paintMinutes: step.paintMinutes,
      shineMinutes: step.shineMinutes,
      dryMinutes: step.dryMinutes,
      cautions: step.cautions.map(words),
      notes: (step.notes ?? []).map(words),
      consequence: step.consequence ? words(step.consequence) : null,
      expectedLightness: stepLightness(plan, step),
      expectedImage: withPictures ? stepPicture(step.n) : null,
    })),
  };
}
