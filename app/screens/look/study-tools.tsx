import type { Signal } from '@preact/signals';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { Lab } from '../../core/colour/lab.ts';
import { shrinkSlots } from '../../core/raster/paint-slots.ts';
import {
  applySquint,
  type LightPlanes,
  type Pixels,
  reducedLight,
  type Squint,
  squintOf,
} from '../../core/raster/squint.ts';
import type { RangeMode, Reading, ToneRange } from '../../core/reading/reading.ts';
import { onTheSheet, rangeIn } from '../../core/reading/tone-range.ts';
import { type Layer, slotLayer } from '../../drawing/layers.ts';
import { Button } from '../../ui/controls/button.tsx';
import { SliderRow } from '../../ui/controls/slider-row.tsx';
import { asNotan } from '../../ui/picture/picture-layers.ts';
import { bandsByLimits } from './band-limits.ts';
import { SpotCard } from './spot-card.tsx';
import { spotColours } from './spot-colours.ts';
import { SpotStage } from './spot-stage.tsx';
import styles from './study-tools.module.css';
import type { Look } from './use-look.ts';
import { ValueStrip } from './value-strip.tsx';

/** A lightness map (L* x 2.55 a pixel) in neutral greys, each lightness taken to another first. */
function lightnessLayer(lightnessMap: Uint8Array, shownAs: (lightness: number) => number): Layer {
  const greys = Array.from({ length: 256 }, (_, bin): Lab => [shownAs(bin / 2.55), 0, 0]);
  return slotLayer(lightnessMap, greys);
}

/** The picture as half-closed eyes see it, blown up to the size of the canvas. */
const squintLayer =
  (light: LightPlanes, squint: Squint, grey: boolean): Layer =>
  (context) => {
    const { width, height } = light;
    const small = new OffscreenCanvas(width, height);
    const rgba = applySquint(light, squint, grey);
    small.getContext('2d')?.putImageData(new ImageData(rgba, width, height), 0, 0);
    context.drawImage(small, 0, 0, context.canvas.width, context.canvas.height);
  };

/** The pixels of a picture; nothing where its bitmap was handed back already. */
function pixelsOf(bitmap: ImageBitmap): Pixels | null {
  if (bitmap.width === 0) return null;
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context?.drawImage(bitmap, 0, 0);
  return context?.getImageData(0, 0, bitmap.width, bitmap.height) ?? null;
}

/** The few values as limits being moved would make them, straight from the simplified lightness. */
function liveValuesLayer(
  lightnessMap: Uint8Array,
  histogram: readonly number[],
  limits: readonly number[],
  range: ToneRange,
): Layer {
  const bands = asNotan(bandsByLimits(histogram, limits), range);
  return lightnessLayer(lightnessMap, (lightness) => {
    const above = limits.filter((limit) => limit > lightness).length;
    return bands[above]?.lightness ?? lightness;
  });
}

const choices: readonly (readonly [RangeMode, string])[] = [
  ['photographed', 'As in the photo'],
  ['opened', 'Full range'],
];

interface RangePicturesProps {
  reading: Reading;
  lightnessMap: Uint8Array;
  onChoose: (mode: RangeMode) => void;
}

/** The sheet in grey as it would become, both ways side by side; a tap takes one. */
function RangePictures({ reading, lightnessMap, onChoose }: RangePicturesProps) {
  const { width, height } = reading.raster;
  const small = useMemo(
    () => shrinkSlots(lightnessMap, width, height, 360),
    [lightnessMap, width, height],
  );
  return (
    <fieldset class={styles.row}>
      <legend class="spoken">How dark and light the sheet becomes</legend>
      {choices.map(([mode, name]) => (
        <button
          key={mode}
          type="button"
          class={styles.choice}
          aria-pressed={mode === reading.range.mode}
          onClick={() => onChoose(mode)}
        >
          <TonePicture
            lightnessMap={small.slotMap}
            width={small.width}
            height={small.height}
            range={rangeIn(mode, reading.range)}
          />
          {name}
        </button>
      ))}
    </fieldset>
  );
}

const words = ['eyes open', 'half closed', 'nearly shut'] as const;

/** How far the eyes are closed. */
function SquintStrength({ strength }: { strength: Signal<number> }) {
  const said = words[Math.min(2, Math.floor(strength.value * 3))] ?? words[0];
  return (
    <SliderRow
      label="Squint"
      said={said}
      min={0}
      max={100}
      step={5}
      value={Math.round(strength.value * 100)}
      onMove={(percent) => {
        strength.value = percent / 100;
      }}
      onSettle={() => undefined}
    />
  );
}

/** Other ways to look: touch a spot; with a fresh eye, upside down or as in a mirror. */
function ToolRow({ look, canTouch }: { look: Look; canTouch: boolean }) {
  const { turn, touching, marks, moving } = look;
  const { upsideDown, mirrored } = turn.value;
  return (
    <div class={styles.tools}>
      <Button
        aria-pressed={touching.value}
        disabled={!canTouch}
        onClick={() => {
          marks.value = [];
          moving.value = null;
          touching.value = !touching.value;
        }}
      >
        Touch for value
      </Button>
      <fieldset class={styles.fresh}>
        <legend class="quiet">With a fresh eye</legend>
        <Button
          aria-pressed={upsideDown}
          onClick={() => {
            turn.value = { mirrored, upsideDown: !upsideDown };
          }}
        >
          Upside down
        </Button>
        <Button
          aria-pressed={mirrored}
          onClick={() => {
            turn.value = { upsideDown, mirrored: !mirrored };
          }}
        >
          Mirror
        </Button>
      </fieldset>
    </div>
  );
}

/** What the study has beyond its first sight: loaded after it, in a file of its own. */
export const studyTools = {
  RangePictures,
  SpotCard,
  SpotStage,
  SquintStrength,
  ToolRow,
  ValueStrip,
  liveValuesLayer,
  pixelsOf,
  reducedLight,
  spotColours,
  squintLayer,
  squintOf,
};

export type StudyTools = typeof studyTools;

interface TonePictureProps {
  /** Simplified lightness, L* x 2.55 a pixel, of that size. */
  lightnessMap: Uint8Array;
  width: number;
  height: number;
  range: ToneRange;
}

/** The picture in grey as the sheet can have it. */
function TonePicture({ lightnessMap, width, height, range }: TonePictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { lo, hi, dark, paper, mode } = range;
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context) lightnessLayer(lightnessMap, (lightness) => onTheSheet(range, lightness))(context);
  }, [lightnessMap, lo, hi, dark, paper, mode]);
  return <canvas ref={canvas} class={styles.picture} width={width} height={height} />;
}
