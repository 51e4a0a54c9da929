import type { PatchFrame } from '../../../app/model/patch-frame.ts';

const middle = ({ top, height }: PatchFrame): number => top + height / 2;

/**
 * Frames row by row from above, each row from the left. A row is followed from frame to frame, so that
 * a sheet a little turned keeps its rows.
 */
export function readingOrder(frames: readonly PatchFrame[]): PatchFrame[] {
  const rows: PatchFrame[][] = [];
  for (const frame of [...frames].sort((one, two) => one.left - two.left)) {
    const near = rows
      .map((row) => ({ row, last: row[row.length - 1] as PatchFrame }))
      .filter(
        ({ last }) =>
          Math.abs(middle(last) - middle(frame)) < 0.6 * Math.max(last.height, frame.height) &&
          last.left + last.width <= frame.left + 0.3 * frame.width,
      )
      .sort(
        (one, two) =>
          Math.abs(middle(one.last) - middle(frame)) - Math.abs(middle(two.last) - middle(frame)),
      )[0];
    if (near) near.row.push(frame);
    else rows.push([frame]);
  }
  const heightOf = (row: readonly PatchFrame[]): number =>
    row.reduce((sum, frame) => sum + middle(frame), 0) / row.length;
  return rows.sort((one, two) => heightOf(one) - heightOf(two)).flat();
}
