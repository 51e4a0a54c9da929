/** FNV-1a, 32 bits (Fowler, Noll, Vo; from memory): no secret, only the same name for the same plan. */
function fingerprint(text: string, start: number): number {
  let hash = start;
  for (let i = 0; i < text.length; i++) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 16777619) >>> 0;
  }
  return hash;
}

/** A name for a plan that depends only on what it was made from. */
export function planId(from: unknown): string {
  const text = JSON.stringify(from);
  const parts = [2166136261, 40389].map((start) => fingerprint(text, start).toString(36));
  return `plan-${parts.join('')}`;
}
