import { type ReadonlySignal, signal } from '@preact/signals';
import { decisionsForPaints, paintsAnswered } from '../../core/decisions/handed-on.ts';
import type { NewDecision, Painting } from '../../core/decisions/painting.ts';
import { boxWishes, paletteWish } from '../../core/decisions/wishes.ts';
import { type OwnBox, ownPaints, tickedPaints } from '../../core/paint/own-box.ts';
import type { Paint } from '../../core/paint/paint.ts';
import type { StandIn } from '../../core/palette/offers/stand-ins.ts';
import type { WashPlan } from '../../core/plan/plan.ts';
import { planDifferences } from '../../core/plan/plan-differences.ts';
import { measuredPaintsInWords } from '../../core/words/paint/measured-paint.ts';
import { standInInWords } from '../../core/words/palette/stand-ins.ts';
import type { Store } from '../../storage/open-store.ts';
import type { OwnBoxState } from '../paints/own-box.ts';
import type { StandInCalls } from './screen-calls.ts';
import type { Studio } from './studio.ts';

/** What a plan that was handed on is asked about with. */
export interface HandedNeeds {
  readonly store: Pick<Store, 'planById'>;
  readonly client: StandInCalls;
  readonly ownBox: Pick<OwnBoxState, 'box' | 'change'>;
}

/** How things stand with a plan that was handed on. */
export type HandedPlan =
  /** Its paints are hers, or she keeps them. */
  | {
      readonly kind: 'theirs';
      readonly all: boolean;
      /** What is to be known of paints the teacher measured; empty where there are none. */
      readonly measured: string;
    }
  /** Whose paints it is to be painted with is to be asked: what of it she does not own, and what she would take. */
  | {
      readonly kind: 'asked';
      readonly theirs: WashPlan;
      readonly missing: readonly string[];
      readonly standIns: readonly StandIn[];
      readonly measured: string;
    }
  /** Painted with her own: what differs, a sentence each. */
  | { readonly kind: 'hers'; readonly sentences: readonly string[] };

const paletteOf = ({ palette, optics }: Pick<WashPlan, 'palette' | 'optics'>): readonly Paint[] =>
  optics.filter(({ id }) => palette.some((entry) => entry.id === id));

/** Where paints the teacher put in come to when they are kept, or came to; empty where there are none to tell of. */
function measuredInWords(paints: readonly Paint[], box: OwnBox, came: boolean): string {
  const here = ownPaints(box).map(({ id }) => id);
  const told = paints.filter(
    ({ id, provenance }) =>
      provenance === undefined && here.includes(id) === came && !box.owned?.includes(id),
  );
  if (told.length === 0) return '';
  return measuredPaintsInWords({
    names: told.map(({ name }) => name),
    came,
    ticked: tickedPaints(box) !== null,
  });
}

interface Shown {
  readonly painting: Painting;
  readonly plan: WashPlan;
  readonly families: Parameters<typeof planDifferences>[2];
}

/** Null where the painting was not handed on, or the plan it came with is gone. */
export async function handedPlan(
  aborted: AbortSignal,
  { painting, plan, families }: Shown,
  box: OwnBox,
  { store, client }: Pick<HandedNeeds, 'store' | 'client'>,
): Promise<HandedPlan | null> {
  const theirs = painting.handedOn && (await store.planById(painting.handedOn.planId));
  if (!theirs) return null;
  const paints = paletteOf(theirs);
  const { chosen } = paletteWish(painting.decisions);
  const hers = boxWishes(box);
  if (!paintsAnswered(painting)) {
    const standIns = await client.standIns(aborted, paints, hers);
    const missing = paints.filter(({ id }) => !standIns.some(({ yours }) => yours === id));
    return missing.length > 0 && standIns.some(({ yours }) => yours !== null)
      ? {
          ...{ kind: 'asked', theirs, missing: missing.map(({ name }) => name), standIns },
          measured: measuredInWords(paints, box, false),
        }
      : { kind: 'theirs', all: true, measured: '' };
  }
  if (!chosen || paints.every(({ id }) => chosen.includes(id)))
    return { kind: 'theirs', all: false, measured: measuredInWords(paints, box, true) };
  // Still the plan from before, while hers is being made.
  if (plan.palette.some(({ id }) => !chosen.includes(id))) return null;
  const taken = await client.standIns(aborted, paints, { ...hers, box: chosen });
  return {
    kind: 'hers',
    sentences: [
      ...planDifferences(theirs, plan, families),
      ...taken.flatMap(({ told }) => (told ? [standInInWords(told)] : [])),
    ],
  };
}

const washesOf = ({ mixes }: WashPlan): number =>
  Math.max(0, ...mixes.filter(({ parts }) => parts.length > 0).map(({ wash }) => wash));

/** Her answer: all but the last are noted, and the plan is made with the last. */
async function decideAll(
  studio: Pick<Studio, 'note' | 'decide'>,
  made: readonly NewDecision[],
): Promise<void> {
  for (const decision of made.slice(0, -1)) await studio.note(decision);
  const last = made.at(-1);
  if (last) await studio.decide(last);
}

type Answering = Pick<Studio, 'note' | 'decide' | 'painting'>;

/** The nearest of her paints, as many washes, all else as it was. */
export async function paintWithHers(
  studio: Answering,
  { theirs, standIns }: Extract<HandedPlan, { kind: 'asked' }>,
): Promise<void> {
  const painting = studio.painting.value;
  if (!painting) return;
  const exchange = new Map(
    standIns.flatMap(({ theirs: id, yours }) => (yours === null ? [] : [[id, yours] as const])),
  );
  await decideAll(studio, decisionsForPaints(painting, exchange, washesOf(theirs)));
}

/** Its very paints, whether she owns them or not; those that were the teacher's own are put in her box, not ticked. */
export async function keepTheirs(
  studio: Answering,
  { change, box }: HandedNeeds['ownBox'],
  { theirs }: Extract<HandedPlan, { kind: 'asked' }>,
): Promise<void> {
  const painting = studio.painting.value;
  if (!painting) return;
  const paints = paletteOf(theirs);
  const known = ownPaints(box.value).map(({ id }) => id);
  const unknown = paints.filter(
    ({ id, provenance }) => provenance === undefined && !known.includes(id),
  );
  if (unknown.length > 0)
    await change((before) => ({
      ...before,
      paints: [...before.paints, ...unknown],
      gone: before.gone.filter((id) => !unknown.some((paint) => paint.id === id)),
    }));
  const exchange = new Map(paints.map(({ id }) => [id, id]));
  await decideAll(studio, decisionsForPaints(painting, exchange, 0));
}

/** What `handedPlan` found, followed while the painting, its plan and her box change. */
export function createHandedPlan(needs: HandedNeeds): {
  readonly found: ReadonlySignal<HandedPlan | null>;
  look(shown: Shown, box: OwnBox): () => void;
} {
  const found = signal<HandedPlan | null>(null);
  return {
    found,
    look(shown, box) {
      const asking = new AbortController();
      handedPlan(asking.signal, shown, box, needs).then(
        (answer) => {
          if (!asking.signal.aborted) found.value = answer;
        },
        () => undefined, // the plan is there all the same
      );
      return () => asking.abort();
    },
  };
}
