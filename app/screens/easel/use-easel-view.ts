import { type ReadonlySignal, useComputed, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { Lab } from '../../core/colour/lab.ts';
import type { Step } from '../../core/plan/plan.ts';
import type { Edge } from '../../core/reading/edges/edge.ts';
import { bitmapLayer, type Layer, slotLayer } from '../../drawing/layers.ts';
import { edgeLayer, paled } from '../../drawing/line-layers.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { PictureCalls } from '../../state/painting/screen-calls.ts';
import type { Easel } from '../../state/session/easel.ts';
import { wholePicture, type Zoom } from '../../ui/picture/picture-zoom.ts';
import { stepLayers } from '../../ui/picture/step-layers.ts';
import { useSoft } from '../../ui/picture/use-soft.ts';

/** What of the picture is looked at, and the layers to show it with. */
export function useEaselView(easel: Easel, calls: PictureCalls) {
  const asked = useSignal<EaselView>('where');
  const grey = useSignal(false);
  const zoom = useSignal<Zoom>(wholePicture);
  /** A band she picked herself, for the step she picked it at. */
  const picked = useSignal<{ key: string; band: number } | null>(null);

  const bands = useComputed<ReadonlySet<number>>(() => {
    const step = easel.step.value;
    const all = easel.desk.value?.seen.reading.bands.map(({ band }) => band) ?? [];
    if (!step) return new Set();
    if (picked.value?.key === step.key) return new Set([picked.value.band]);
    return bandsOf(step, all, easel.bandsDone.value);
  });
  const desk = easel.desk.value;
  const picture = useMemo(
    () => desk && { slotMap: desk.seen.slotMap, size: desk.seen.reading.raster, edges: desk.edges },
    [desk?.seen, desk?.edges],
  );
  const blend = useSoft(calls, picture);
  const soft = useSignal(blend);
  soft.value = blend;
  const still = useComputed(() => {
    const openDesk = easel.desk.value;
    return openDesk ? stillLayers(openDesk.seen, openDesk.edges) : {};
  });
  const ofStep = useComputed(() => {
    const openDesk = easel.desk.value;
    const step = easel.step.value;
    return openDesk && step ? stepLayers(openDesk.seen, openDesk.plan, step, soft.value) : {};
  });
  const band = useComputed(() => {
    const openDesk = easel.desk.value;
    return openDesk ? { band: bandsLayer(openDesk.seen, bands.value) } : {};
  });
  const layers: ReadonlySignal<Record<string, Layer>> = useComputed(() => ({
    ...ofStep.value,
    ...band.value,
    ...still.value,
  }));
  const shown = useComputed(() => {
    const step = easel.step.value;
    return step ? shownView(asked.value, step) : 'reference';
  });
  return useMemo(
    () => ({
      shown,
      grey,
      zoom,
      bands,
      layers,
      look(view: EaselView) {
        asked.value = view;
      },
      toggleGrey() {
        grey.value = !grey.value;
      },
      pick(band: number) {
        const key = easel.step.peek()?.key;
        if (key === undefined) return;
        picked.value = { key, band };
        asked.value = 'band';
      },
    }),
    [easel],
  );
}

export type EaselViewState = ReturnType<typeof useEaselView>;

/** What the picture at the easel can show; each but the band also in grey. */
export const easelViews = ['where', 'reference', 'band', 'sheet', 'edges'] as const;
export type EaselView = (typeof easelViews)[number];

/** Name of the layer that shows a view. */
export const easelLayer = (view: EaselView, grey: boolean): string =>
  grey && view !== 'band' ? `${view}-grey` : view;

export const viewWords: Record<EaselView, string> = {
  where: 'where to paint',
  reference: 'the reference',
  band: 'one value alone',
  sheet: 'how it should look now',
  edges: 'its edges',
};

type Placed = Pick<Step, 'kind' | 'slots'>;

/** A step that touches nothing in particular, or all of it, has no 'where' to show. */
export const hasPlace = ({ kind, slots }: Placed): boolean =>
  slots.length > 0 && kind !== 'last-look' && kind !== 'transfer';

/** What is shown of a step: the view asked for, or what comes nearest to it. */
function shownView(asked: EaselView, step: Placed): EaselView {
  if (asked !== 'where' || hasPlace(step)) return asked;
  if (step.kind === 'transfer') return 'edges'; // what is to be drawn
  return step.kind === 'dry' || step.kind === 'last-look' ? 'sheet' : 'reference';
}

/** The bands a step is about; where it is about none, the lightest not yet painted, else the darkest. */
function bandsOf(
  { bands }: Pick<Step, 'bands'>,
  all: readonly number[],
  done: ReadonlySet<number>,
): ReadonlySet<number> {
  if (bands.length > 0) return new Set(bands);
  const next = all.find((band) => !done.has(band)) ?? all.at(-1);
  return new Set(next === undefined ? [] : [next]);
}

/** A band alone is black on the wall's grey, L*. */
const alone: Lab = [12, 0, 0];
const elsewhere: Lab = [62, 0, 0];

/** Some bands alone. */
const bandsLayer = ({ reading, slotMap }: OpenedReading, bands: ReadonlySet<number>): Layer =>
  slotLayer(
    slotMap,
    reading.slots.map(({ band }) => (bands.has(band) ? alone : elsewhere)),
  );

/** The same at every step: painted once. */
function stillLayers(seen: OpenedReading, edges: readonly Edge[]): Record<string, Layer> {
  const reference = bitmapLayer(seen.reference);
  const grey = bitmapLayer(seen.grey);
  return {
    reference,
    'reference-grey': grey,
    edges: edgeLayer(paled(reference), edges),
    'edges-grey': edgeLayer(paled(grey), edges),
  };
}
