import { isOfReach, type Mix, type Step, type WashPlan } from '../../core/plan/plan.ts';
import { puddleAmount } from '../../core/plan/puddle-amount.ts';
import { edgeShares } from '../../core/reading/edges/edge.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { plannedLightness, reservesOf } from '../../core/reading/tone-range.ts';
import { reservesIn } from '../../core/reading/whites/whites.ts';
import { stepPicture } from './write-pictures.ts';

/** How much of every puddle to mix for every wash: one row a puddle x wash. Rough. */
function puddleRows(plan: WashPlan, { sheet }: Pick<Reading, 'sheet'>) {
  const places = new Map(
    plan.mixes.flatMap(({ puddle, wash }) =>
      puddle === null ? [] : [[`${puddle} ${wash}`, { puddle, wash }] as const],
    ),
  );
  return [...places.values()].flatMap(({ puddle, wash }) => {
    const rows = plan.mixes.filter((mix) => mix.puddle === puddle && mix.wash === wash);
    const amount = puddleAmount(plan, rows, sheet);
    return amount ? [{ puddle, wash, ...amount }] : [];
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

/** The one passage a step works in; 'sheet' where it is about several or the whole of it. */
function passageOf(step: Step, plan: WashPlan): string {
  const passages = new Set(step.slots.map((slot) => plan.slots[slot]?.passage));
  const [only] = passages;
  return passages.size === 1 && only !== undefined ? only : 'sheet';
}

const mixRow = (mix: Mix) => ({
  id: mix.id,
  wash: mix.wash,
  passage: mix.passage,
  family: mix.family,
  puddle: mix.puddle,
  parts: mix.parts,
  load: mix.load,
  consistency: mix.consistency,
  target: mix.target,
  expected: mix.expected,
  ...(mix.weaker && { weaker: mix.weaker }),
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
      plannedLightness: plannedLightness(plan.range, band.tones),
    })),
    families: reading.families.map(({ id, lab, share }) => ({ id, lab, share })),
    reserves: { share: reserves.share, count: reserves.count },
    edges: edgeShares(reading.edges ?? []),
    masses: reading.masses,
    warnings: [...reading.warnings, ...plan.warnings],
    reach: plan.warnings.filter(isOfReach),
    palette: plan.palette.map(({ id, ci, name, why }) => ({ id, ci, name, why })),
    mixes: plan.mixes.map(mixRow),
    puddles: puddleRows(plan, reading),
    washesWhy: plan.washesWhy ?? null,
    passages: plan.passages ?? null,
    fit: plan.fit ?? null,
    steps: plan.steps.map((step) => ({
      n: step.n,
      kind: step.kind,
      title: step.title,
      passage: passageOf(step, plan),
      bands: step.bands,
      families: step.families,
      mixes: step.mixes,
      paper: step.paper,
      technique: step.technique,
      prompt: step.prompt,
      watch: step.watch,
      soften: step.soften,
      touches: step.touches ?? [],
      brush: step.brush ?? null,
      board: step.board ?? null,
      rules: step.rules,
      paintMinutes: step.paintMinutes,
      shineMinutes: step.shineMinutes,
      dryMinutes: step.dryMinutes,
      cautions: step.cautions,
      consequence: step.consequence ?? null,
      expectedLightness: stepLightness(plan, step),
      expectedImage: withPictures ? stepPicture(step.n) : null,
    })),
  };
}
