import { useMode as addMode, converter, modeLab65, modeRgb } from 'culori/fn';

addMode(modeRgb);
addMode(modeLab65);
const toLab = converter('lab65');

/** RGBA codes to L*, pixel by pixel, as one would with a colour library. */
export function lightnessByLibrary(rgba: Uint8ClampedArray): Float32Array {
  const plane = new Float32Array(rgba.length / 4);
  for (let i = 0, at = 0; i < plane.length; i++, at += 4) {
    const [r = 0, g = 0, b = 0] = [rgba[at], rgba[at + 1], rgba[at + 2]];
    plane[i] = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 }).l;
  }
  return plane;
}
