import { expect, it } from 'vitest';
import { appWay, measuredPaints } from '../../../../support/paint/calibration.ts';
import { surenessFigures, surenessOf } from '../../../../support/paint/sureness.ts';

// On more charts and paints: `npm run measures`.
it('what is said of sureness goes with the true error of mixes, and "quite sure" is wrong in one of ten at most', async () => {
  const all = await surenessOf(measuredPaints, [11, 12, 13, 14, 15, 16], appWay);
  const { spearman, quite, wrong } = surenessFigures(all);
  console.info(
    `Spearman ${spearman.toFixed(2)} over ${all.length} charts; quite sure ${quite}, wrong ${wrong}`,
  );
  expect(all.length).toBeGreaterThan(65);
  expect(spearman).toBeLessThan(-0.35);
  expect(quite).toBeGreaterThan(10);
  expect(wrong / quite).toBeLessThan(0.1);
});
