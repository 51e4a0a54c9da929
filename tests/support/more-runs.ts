const times = Number(process.env.RUNS ?? 1);

/**
 * How often a property is tried: the usual number in `npm test`, so many times as often with RUNS=40 before the
 * command, other cases every time.
 */
export const runs = (usual: number, seed: number) => ({
  numRuns: Math.round(usual * times),
  ...(times === 1 && { seed }),
});
