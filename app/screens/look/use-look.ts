import { type Signal, useSignal } from '@preact/signals';
import type { Point } from '../../core/colour/lab.ts';
import type { PictureTurn } from '../../ui/picture/picture.tsx';

export type LookView = 'grey' | 'colour' | 'values' | 'squint' | 'edges';

/** What she looks at, as long as she is on the screen; nothing of it is kept. */
export interface Look {
  readonly view: Signal<LookView>;
  /** The one band shown alone. */
  readonly only: Signal<number | null>;
  /** Limits between bands while they are moved, until the reading has followed. */
  readonly limits: Signal<readonly number[] | null>;
  /** How far the eyes are closed, 0..1, and whether grey is squinted at. */
  readonly squint: Signal<number>;
  readonly squintGrey: Signal<boolean>;
  readonly turn: Signal<PictureTurn>;
  readonly touching: Signal<boolean>;
  /** Spots set by a tap, at most two, and the one under the finger; 0..1 of the picture. */
  readonly marks: Signal<readonly Point[]>;
  readonly moving: Signal<Point | null>;
}

export const useLook = (): Look => ({
  view: useSignal<LookView>('grey'),
  only: useSignal<number | null>(null),
  limits: useSignal<readonly number[] | null>(null),
  squint: useSignal(0.4),
  squintGrey: useSignal(true),
  turn: useSignal({ upsideDown: false, mirrored: false }),
  touching: useSignal(false),
  marks: useSignal<readonly Point[]>([]),
  moving: useSignal<Point | null>(null),
});

/** Another view; a band shown alone is let go. */
export function chooseView({ view, only }: Look, next: LookView): void {
  only.value = null;
  view.value = next;
}

/** A tap on the picture: grey and back, whatever is shown. */
export function toggleGrey(look: Look): void {
  if (look.only.value !== null) look.only.value = null;
  else if (look.view.value === 'squint') look.squintGrey.value = !look.squintGrey.value;
  else look.view.value = look.view.value === 'grey' ? 'colour' : 'grey';
}

const viewLayer = (view: LookView, squintGrey: boolean): string =>
  view === 'squint' && squintGrey ? 'squint-grey' : view;

/** The name of the layer that is shown. */
export const shownLayer = ({ view, only, squintGrey }: Look): string =>
  only.value === null ? viewLayer(view.value, squintGrey.value) : `only-${only.value}`;

/** The name of the layer that a tap on the picture shows: see `toggleGrey`. */
export function layerAfterTap({ view, only, squintGrey }: Look): string {
  if (only.value !== null) return viewLayer(view.value, squintGrey.value);
  if (view.value === 'squint') return viewLayer('squint', !squintGrey.value);
  return view.value === 'grey' ? 'colour' : 'grey';
}

/** Whether a tap would bring colour. */
export const showsGrey = ({ view, squintGrey }: Look): boolean =>
  view.value === 'squint' ? squintGrey.value : view.value === 'grey';
