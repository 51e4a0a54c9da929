import type { CostTables } from '../../workers/kernels/palette/cost-tables.ts';
import { type JudgedSet, judgeSet } from '../../workers/kernels/palette/judge-set.ts';
import type { PaletteTarget } from '../../workers/kernels/palette/palette-target.ts';

/**
 * What grabbing whatever looks like the photo gives: for every colour the single paint that is nearest to it, and of
 * these the `size` that are nearest over most of the area; mixes of them are allowed.
 */
export function nearestSingles(
  tables: CostTables,
  targets: readonly PaletteTarget[],
  size: number,
): JudgedSet {
  const areas = new Map<number, number>();
  for (const [t, { weight }] of targets.entries()) {
    let nearest = 0;
    const cost = (paint: number): number =>
      tables.costs[tables.indexOf([paint]) * targets.length + t] as number;
    for (let paint = 1; paint < tables.paintCount; paint++) {
      if (cost(paint) < cost(nearest)) nearest = paint;
    }
    areas.set(nearest, (areas.get(nearest) ?? 0) + weight);
  }
  const most = [...areas].sort((one, two) => two[1] - one[1] || one[0] - two[0]).slice(0, size);
  return judgeSet(
    tables,
    targets,
    most.map(([paint]) => paint).sort((x, y) => x - y),
  );
}
