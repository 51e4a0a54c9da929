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
