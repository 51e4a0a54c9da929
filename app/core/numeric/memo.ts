/** The last answers by what was asked, at most `most` of them; answers are shared and must not be changed. */
export class LastAnswers<T> {
  readonly #answers = new Map<string, T>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  get(asked: string): T | undefined {
    const answer = this.#answers.get(asked);
    if (answer !== undefined) this.keep(asked, answer); // asked for again: it is dropped last
    return answer;
  }

  keep(asked: string, answer: T): void {
    this.#answers.delete(asked);
    this.#answers.set(asked, answer);
    const [oldest] = this.#answers.keys();
    if (this.#answers.size > this.#most && oldest !== undefined) this.#answers.delete(oldest);
  }
}

/** What is made from something and then kept beside it: asked again, the same answer. */
export function memoizeByObject<N extends object, M>(make: (needs: N) => M): (needs: N) => M {
  const made = new WeakMap<N, M>();
  return (needs) => {
    const found = made.get(needs) ?? make(needs);
    made.set(needs, found);
    return found;
  };
}
