import type { KindTones, MeanTones } from './kind-tones.ts';
import { familiesPerBand, familyOfKind, groupOfKind, kindOf, kindsAtMost } from './kinds.ts';

/** A group's (one band of one passage) share of a family under this part of the picture is not worth a mix of its own ... */
const scarceShare = 0.004;
/** ... unless its colour is this far from all others of the band (a*, b*): an accent. Own limits. */
const accentDistance = 25;

type Means = readonly (MeanTones | null)[];

/** The family of the same group nearest in colour that is not scarce itself, and how far it is. */
function nearestInGroup(kind: number, [, a, b]: MeanTones['lab'], plenty: Means) {
  let best = kind;
  let least = Number.POSITIVE_INFINITY;
  for (let family = 0; family < familiesPerBand; family++) {
    const other = kindOf(groupOfKind(kind), family);
    const lab = plenty[other]?.lab;
    if (!lab || other === kind) continue;
    const distance = Math.hypot(lab[1] - a, lab[2] - b);
    if (distance >= least) continue;
    least = distance;
    best = other;
  }
  return { best, least };
}

/** Which kind stands in for each kind; itself where it is worth painting. */
function standIns(tones: KindTones): Uint8Array {
  const means = Array.from({ length: kindsAtMost }, (_, kind) => tones.meanOf((k) => k === kind));
  const total = means.reduce((sum, mean) => sum + (mean?.pixels ?? 0), 0);
  // The commonest family of a group is never scarce, or a small group would vanish.
  const most = new Float64Array(kindsAtMost);
  for (const [kind, mean] of means.entries()) {
    const group = groupOfKind(kind);
    most[group] = Math.max(most[group] as number, mean?.pixels ?? 0);
  }
  const plenty = means.map((mean, kind) => {
    if (!mean) return null;
    const enough = Math.min(scarceShare * total, most[groupOfKind(kind)] as number);
    return mean.pixels >= enough ? mean : null;
  });
  return Uint8Array.from({ length: kindsAtMost }, (_, kind) => {
    if (plenty[kind]) return kind;
    const own = means[kind];
    const colour = own ?? tones.meanOf((k) => familyOfKind(k) === familyOfKind(kind));
    if (!colour) return kind;
    const { best, least } = nearestInGroup(kind, colour.lab, plenty);
    return own && least > accentDistance ? kind : best;
  });
}

/**
 * Every pixel's kind anew from its group after merging and its family before. Where a group has too
 * little of a family, or took over pixels of one it had none of, its nearest family in colour takes
 * them.
 */
export function joinScarceKinds(kinds: Uint8Array, groups: Uint8Array, tones: KindTones): void {
  const instead = standIns(tones);
  for (let i = 0; i < kinds.length; i++) {
    const family = familyOfKind(kinds[i] as number);
    kinds[i] = instead[kindOf(groups[i] as number, family)] as number;
  }
}
