/** A photo of white paper with a row of steps, each twice as thin, and a patch or more below. */
export async function paintedSheet(
  loads: readonly number[] = [16, 8, 4, 2, 1],
  below: readonly number[] = [3],
): Promise<File> {
  const canvas = new OffscreenCanvas(800, 600);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no canvas');
  const paper = [0.72, 0.66, 0.55];
  // A blue: absorbs red most (Beer's law, twice through the layer), some light off the surface.
  const absorbed = [0.42, 0.2, 0.03];
  const code = (light: number): number =>
    Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055));
  const colour = (load: number): string =>
    `rgb(${paper.map((white, c) => code(white * (0.03 + 0.97 * Math.exp(-2 * (absorbed[c] as number) * load)))).join(' ')})`;
  context.fillStyle = colour(0);
  context.fillRect(0, 0, 800, 600);
  for (const [row, steps] of [loads, below].entries()) {
    for (const [n, load] of steps.entries()) {
      context.fillStyle = colour(load);
      context.fillRect(100 + 130 * n, 140 + 220 * row, 90, 120);
    }
  }
  const blob = await canvas.convertToBlob({ type: 'image/png' });
  return new File([blob], 'steps.png', { type: 'image/png' });
}
