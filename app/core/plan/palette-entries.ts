import type { Paint } from '../paint/paint.ts';
import { GroupMixer } from '../palette/library/group-mixer.ts';
import type { Said } from '../words/plan/words.ts';
import type { Mix, PaletteEntry } from './plan.ts';
import { nameOfFamily, type PlanFacts } from './plan-facts.ts';
import type { Run } from './runs/run.ts';
import { runsIn } from './runs/run-plan.ts';

interface Use {
  /** Area x share of the mix, per family. */
  readonly families: Map<number, number>;
  /** The other paints of its mixes, the same way, per family. */
  readonly partners: Map<string, number>;
  total: number;
  darks: number;
}

const add = <K>(map: Map<K, number>, key: K, amount: number): void => {
  map.set(key, (map.get(key) ?? 0) + amount);
};

const largest = <K>(map: Map<K, number>): K | undefined =>
  [...map].reduce<[K | undefined, number]>(
    (best, [key, amount]) => (amount > best[1] ? [key, amount] : best),
    [undefined, 0],
  )[0];

function useOf(facts: PlanFacts, paint: Paint): Use {
  const use: Use = { families: new Map(), partners: new Map(), total: 0, darks: 0 };
  for (const { washes } of facts.passages) {
    for (const [n, wash] of washes.entries()) {
      for (const mix of wash.mixes) {
        const own = mix.parts.find((part) => part.paint === paint.id);
        if (!own) continue;
        const sum = mix.parts.reduce((all, part) => all + part.parts, 0);
        const amount = areaOf(facts, mix, wash.slots) * (own.parts / sum);
        add(use.families, mix.family, amount);
        use.total += amount;
        if (n === washes.length - 1) use.darks += amount;
        for (const part of mix.parts) {
          if (part !== own) add(use.partners, part.paint, amount * part.parts);
        }
      }
    }
  }
  return use;
}

function areaOf({ slots }: PlanFacts, mix: Mix, touched: readonly number[]): number {
  return touched.reduce((all, i) => {
    const slot = slots[i];
    return slot?.family === mix.family && slot.passage === mix.passage ? all + slot.share : all;
  }, 0);
}

/** What a paint is for, in about five words, from the mixes it really goes into. */
function why(facts: PlanFacts, use: Use, darkest: boolean, runs: boolean): Said {
  const family = largest(use.families);
  if (family === undefined) return { say: runs ? 'paint/let-in' : 'paint/at-hand' };
  if (facts.paints.length === 1) return { say: 'paint/alone' };
  if (darkest && use.darks > 0) return { say: 'paint/darks' };
  const partner = facts.paints.find((each) => each.id === largest(use.partners));
  const main = (use.families.get(family) ?? 0) / use.total;
  const isMost = main <= 0.5 && use.families.size >= 3;
  const mixed = partner ? { partner: partner.name } : {};
  return isMost
    ? { say: 'paint/most-mixes', ...mixed }
    : { say: 'paint/colour', colour: nameOfFamily(facts, family), ...mixed };
}

/** The palette as the screens list it. */
export function paletteEntries(facts: PlanFacts, runs: readonly Run[] = []): PaletteEntry[] {
  const uses = facts.paints.map((paint) => useOf(facts, paint));
  const mixer = new GroupMixer(facts.paints);
  const depths = facts.paints.map((_, i) => mixer.darkest([i]));
  const darkest = facts.paints.reduce(
    (best, _, i) =>
      (uses[i]?.darks ?? 0) > 0 && (best < 0 || (depths[i] ?? 100) < (depths[best] ?? 100))
        ? i
        : best,
    -1,
  );
  return facts.paints.map((paint, i) => ({
    id: paint.id,
    ci: paint.ci.join(' '),
    name: paint.name,
    why: why(facts, uses[i], i === darkest && facts.paints.length > 1, runsIn(paint, runs)),
    darkest: depths[i],
  }));
}
