import type { Part } from '../../../app/model/part.ts';

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

function letterOf(n: number): string {
  const letter = letters[n % letters.length] as string;
  return n < letters.length ? letter : `${letter}${Math.floor(n / letters.length) + 1}`;
}

/** Names puddles in the order they are first used: the same paints in the same parts are one puddle. */
export class PuddleNames {
  readonly #known = new Map<string, string>();

  /** The puddle's name: 'A', 'B' ... */
  of(parts: readonly Part[]): string {
    const key = parts.map(({ paint, parts: count }) => `${paint} ${count}`).join(' + ');
    const name = this.#known.get(key) ?? letterOf(this.#known.size);
    this.#known.set(key, name);
    return name;
  }
}
