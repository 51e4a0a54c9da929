import type { Lab } from '../../../app/core/colour/lab.ts';
import { colourOfWashes } from '../../../app/core/paint/colour-of-washes.ts';
import type { PaintPatch } from '../../../app/core/paint/measure/paint-measure.ts';
import type { Paint } from '../../../app/core/paint/paint.ts';
import { paintBox } from '../../../app/core/paint/paint-box.ts';

export const paintNamed = (id: string): Paint => {
  const found = paintBox.find((paint) => paint.id === id);
  if (!found) throw new Error(`no paint ${id}`);
  return found;
};

/** Paints that measured ones are mixed with. */
export const triedPaints: readonly Paint[] = [
  'pw6-titanium-white',
  'pb29-ultramarine-blue',
  'py74-arylide-yellow',
  'pbr7-burnt-sienna',
].map(paintNamed);

/** Normal numbers, mean 0, standard deviation 1 (Box and Muller 1958). */
export const normals =
  (random: () => number): (() => number) =>
  () =>
    Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** A ladder of a built-in paint as a camera would have it: Lab noise 1.5, loads 15 % off. */
export const madeLadder = (
  paint: Paint,
  loads: readonly number[],
  normal: () => number,
  noise = 1.5,
  loadError = 0.15,
): PaintPatch[] =>
  loads.map((amount) => {
    const load = amount * Math.exp(loadError * normal());
    const lab = colourOfWashes([{ paints: [paint], parts: [1], load }]);
    return {
      lab: lab.map((value) => value + noise * normal()) as unknown as Lab,
      is: { kind: 'step', amount },
      even: true,
    };
  });
