import { type ReadonlySignal, type Signal, useComputed, useSignal } from '@preact/signals';
import { decidedWhites } from '../../core/decisions/decided-reading.ts';
import { whiteOutlines } from '../../core/raster/trace-outlines.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { whiteMap } from '../../core/reading/whites/white-map.ts';
import { isSmallWhite, type White, type WhiteMode } from '../../core/reading/whites/whites.ts';
import { bitmapLayer, type Layer } from '../../drawing/layers.ts';
import { whitesLayer } from '../../drawing/line-layers.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { Studio } from '../../state/painting/studio.ts';

export type WhiteTool = 'touch' | WhiteMode;

/** A white is meant by its number only as long as the reading is the same. */
interface Chosen {
  readonly reading: Reading;
  readonly index: number;
}

export interface WhitesState {
  readonly tool: Signal<WhiteTool>;
  /** Diameter of the brush as a share of the picture's long side. */
  readonly brush: Signal<number>;
  readonly view: Signal<'colour' | 'grey'>;
  readonly chosen: Signal<Chosen | null>;
  /** A touch that met no white. */
  readonly missed: Signal<boolean>;
  /** The whites with the ways she chose. */
  readonly whites: ReadonlySignal<readonly White[]>;
  /** Index of the chosen white, or -1. */
  readonly index: ReadonlySignal<number>;
  readonly found: ReadonlySignal<ReturnType<typeof onThePage> | null>;
  readonly layers: ReadonlySignal<Readonly<Record<string, Layer>>>;
}

/** Where each white lies, worked out once a reading. */
function onThePage({ reading, slotMap }: OpenedReading) {
  const isWhite = reading.slots.map(({ reserve }) => reserve);
  const map = whiteMap(slotMap, reading.raster, isWhite, reading.whites ?? []);
  return { map, outlines: whiteOutlines(map, reading.raster) };
}

/** What the whites screen shows, and what is being done on it. */
export function useWhites(studio: Studio): WhitesState {
  const tool = useSignal<WhiteTool>('touch');
  const brush = useSignal(0.03);
  const view = useSignal<'colour' | 'grey'>('colour');
  const chosen = useSignal<Chosen | null>(null);
  const missed = useSignal(false);
  const whites = useComputed((): readonly White[] => {
    const painting = studio.painting.value;
    const reading = studio.seen.value?.reading;
    if (!painting || !reading) return [];
    return decidedWhites(reading, painting.decisions, painting.reference).whites ?? [];
  });
  const index = useComputed(() =>
    chosen.value && chosen.value.reading === studio.seen.value?.reading ? chosen.value.index : -1,
  );
  const found = useComputed(() => (studio.seen.value ? onThePage(studio.seen.value) : null));
  // The layers are drawn anew where a way has changed, not for every decision.
  const ways = useComputed(() => whites.value.map(({ way }) => way).join());
  const layers = useComputed((): Readonly<Record<string, Layer>> => {
    const pictures = studio.pictures.value;
    if (!pictures || !found.value) return {};
    const { outlines } = found.value;
    const list = ways.value ? (ways.value.split(',') as White['way'][]) : [];
    return {
      colour: whitesLayer(bitmapLayer(pictures.reference), outlines, list),
      grey: whitesLayer(bitmapLayer(pictures.grey), outlines, list),
    };
  });
  return { tool, brush, view, chosen, missed, whites, index, found, layers };
}

/** So many of the largest whites are numbered in the picture and have a row at once. */
export const maxRows = 12;

/** Indices of the whites that have a row of their own: the large ones, and the chosen one. */
export function shownRows(whites: readonly White[], index: number, all: boolean): number[] {
  const large = [...whites.keys()].filter((i) => !isSmallWhite(whites[i] as White));
  const shown = all ? large : large.slice(0, maxRows);
  if (index >= 0 && index < whites.length && !shown.includes(index)) shown.push(index);
  return shown;
}
